import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { decibels } from '#ui/charts/curveWords.ts'

type Figures = readonly (readonly [name: string, figure: string])[]

/** Weighted levels at the receiver, and NIC where it is defined. */
export function levelFigures({ levelA, levelC, nic, notes }: ReceiverAnswer): Figures {
  const why = notes.some(({ code }) => code === 'no-nic') ? 'none: not between two rooms' : 'not known'
  return [
    ['A-weighted level there', levelA === null ? 'not known' : `${decibels(levelA)}A`],
    ['C-weighted level there', levelC === null ? 'not known' : `${decibels(levelC)}C`],
    ['NIC', nic === null ? why : String(nic)],
  ]
}

/** What a laboratory would rate, what is expected on site, and what is lost between. */
export function siteFigures({ siteLoss }: ReceiverAnswer): Figures {
  const told = (text: (loss: NonNullable<typeof siteLoss>) => string) =>
    siteLoss === null ? 'not known' : text(siteLoss)
  return [
    ['All surfaces and openings, laboratory', told(({ laboratoryStc }) => `STC ${laboratoryStc}`)],
    ['The same with leaks, ducts and flanking, expected on site', told(({ expectedStc }) => `STC ${expectedStc}`)],
    ['Lost between the two', told(({ laboratoryStc, expectedStc }) => decibels(laboratoryStc - expectedStc))],
  ]
}
