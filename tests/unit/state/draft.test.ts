import { describe, expect, it } from 'vitest'
import type { Layer } from '#assemblies/layer.ts'
import { usualBoard, usualCavity } from '#assemblies/usualLayer.ts'
import {
  asNew,
  assemblyOf,
  type Building,
  changeDraft,
  copyDraft,
  deleteLayer,
  draftOf,
  draftProblems,
  emptyDraft,
  insertLayer,
  isKept,
  keepUnread,
  moveLayer,
  savedAs,
  setLayer,
  startBuilding,
  takeBackStep,
  unreadProblems,
} from '#state/draft.ts'
import { anOwnAssembly } from '../../support/ownAssembly.ts'
import { CATALOGUE } from '../../support/samples.ts'

const BOARD = usualBoard('gypsum-type-x')
const CAVITY = usualCavity('mm')
const empty = startBuilding(emptyDraft('wall', 'wood-frame', 'New wall'))

function kinds({ draft }: Building): readonly Layer['kind'][] {
  return draft.layers.map(({ layer }) => layer.kind)
}

function built(...layers: readonly Layer[]): Building {
  return layers.reduce((building, layer, i) => insertLayer(building, i, layer), empty)
}

describe('an assembly in the making', () => {
  it('puts layers in at a place, opens what was put in, moves and takes out', () => {
    const three = built(CAVITY, BOARD, BOARD)
    expect(kinds(three)).toEqual(['cavity', 'board', 'board'])
    expect(three.openKey).toBe('layer-3')
    expect(kinds(moveLayer(three, 'layer-1', 1))).toEqual(['board', 'cavity', 'board'])
    expect(moveLayer(three, 'layer-1', -1)).toBe(three)
    expect(moveLayer(three, 'layer-3', 1)).toBe(three)
    const two = deleteLayer(three, 'layer-2')
    expect(kinds(two)).toEqual(['cavity', 'board'])
    expect(two.openKey).toBe('layer-3')
    const again = insertLayer(two, 0, BOARD)
    expect(new Set(again.draft.layers.map(({ key }) => key)).size).toBe(3)
  })

  it('keeps the last version that can be built beside one that cannot', () => {
    const good = built(CAVITY, BOARD)
    const bad = setLayer(good, 'layer-2', { ...BOARD, thicknessMm: -5 })
    expect(draftProblems(bad.draft)).toHaveLength(1)
    expect(bad.good).toBe(good.draft)
    expect(setLayer(bad, 'layer-2', BOARD).good?.layers[1]?.layer).toBe(BOARD)
    expect(built(CAVITY).good).toBeNull()
  })

  it('goes back step by step', () => {
    const three = built(CAVITY, BOARD, BOARD)
    const back = takeBackStep(takeBackStep(three))
    expect(kinds(back)).toEqual(['cavity'])
    expect(takeBackStep(empty)).toBe(empty)
    expect(changeDraft(three, three.draft)).toBe(three)
  })

  it('is the assembly it was opened from until something changes', () => {
    for (const assembly of [anOwnAssembly(), ...CATALOGUE.assemblies.values()]) {
      const { layers, layerSources, cautions, costBand, fixedTo } = assembly
      const same = assemblyOf(draftOf(assembly), assembly.id)
      expect(same).toMatchObject({ layers, cautions, costBand, fixedTo, needsBareFrame: assembly.needsBareFrame })
      if (layerSources) expect(same.layerSources).toEqual(layerSources)
    }
  })

  it('says of every number whose it is: taken over until it is typed', () => {
    const W07 = CATALOGUE.assemblies.get('W07')
    if (!W07) throw new Error('no W07')
    const copy = startBuilding(copyDraft(W07, 'Copy'))
    const typed = setLayer(copy, 'layer-2', { ...BOARD, thicknessMm: 10 })
    const { layerSources } = assemblyOf(typed.draft, 'own-1')
    expect(layerSources?.[0]).toEqual(W07.layerSources?.[0])
    expect(layerSources?.[1]).toEqual({ text: 'Typed by the user of this project.', status: 'derived' })
  })

  it('begins as a copy without what the original says of its own weight', () => {
    const C06 = CATALOGUE.assemblies.get('C06')
    if (!C06) throw new Error('no C06')
    const copy = copyDraft(C06, 'Copy of it')
    expect(copy).toMatchObject({ name: 'Copy of it', replaces: null, copiedFrom: C06.name })
    expect(copy.cautionLines).not.toContain('weigh about 38')
    expect(copy.cautionLines).toContain('letter from an engineer')
  })

  it('asks for a bare frame wherever channel, clips or studs in the bays come first, whatever is ticked', () => {
    const link = { kind: 'sound-clip', frame: 'wood-stud', rowSpacingMm: 600, clipSpacingMm: 1200 } as const
    const clips = built({ ...CAVITY, link }, BOARD)
    expect(assemblyOf(clips.draft, 'own-1').needsBareFrame).toBe(true)
    expect(assemblyOf(built(CAVITY, BOARD).draft, 'own-1').needsBareFrame).toBe(false)
    expect(assemblyOf(built(BOARD, { ...CAVITY, link }, BOARD).draft, 'own-1').needsBareFrame).toBe(false)
  })

  it('keeps what could not be read with its layer, and forgets it with the layer', () => {
    const unread = keepUnread(built(CAVITY, BOARD), 'layer-2 thickness', '12 furlongs')
    expect(unreadProblems(unread)).toEqual([{ layer: 2, message: 'Layer 2: "12 furlongs" could not be read.' }])
    expect(isKept(unread, [])).toBe(false)
    expect(keepUnread(unread, 'layer-2 thickness', null).unread).toEqual({})
    expect(setLayer(unread, 'layer-2', { ...BOARD }).unread).toEqual(unread.unread)
    expect(setLayer(unread, 'layer-2', CAVITY).unread).toEqual({})
    expect(deleteLayer(unread, 'layer-2').unread).toEqual({})
    expect(deleteLayer(unread, 'layer-1').unread).toEqual(unread.unread)
  })

  it('knows whether anything would be lost', () => {
    const own = anOwnAssembly({ needsBareFrame: false })
    const opened = startBuilding(draftOf(own))
    expect(isKept(opened, [own])).toBe(true)
    const changed = changeDraft(opened, { ...opened.draft, costBand: 5 })
    expect(isKept(changed, [own])).toBe(false)
    const saved = assemblyOf(changed.draft, own.id)
    expect(isKept(savedAs(changed, own.id, own.name), [saved])).toBe(true)
    expect(isKept(changed, [])).toBe(false)
    expect(isKept(empty, [])).toBe(true)
    expect(isKept(built(BOARD), [])).toBe(false)
  })

  it('stays the saved one when steps before the saving are taken back', () => {
    const saved = savedAs(built(CAVITY, BOARD), 'own-1', 'Kept')
    const back = takeBackStep(saved)
    expect(back.draft).toMatchObject({ replaces: 'own-1', name: 'Kept' })
    expect(isKept(back, [assemblyOf(saved.draft, 'own-1')])).toBe(false)
  })

  it('is a new one in another project, whose own assemblies it must not replace', () => {
    const opened = asNew(startBuilding(draftOf(anOwnAssembly())))
    expect(opened.draft.replaces).toBeNull()
    expect(opened.good).toBe(opened.draft)
  })

  it('shows itself as the last good version once it is saved', () => {
    const saved = savedAs(built(BOARD), 'own-1', 'Kept')
    expect(saved.good).toBe(saved.draft)
    expect(saved.draft).toMatchObject({ replaces: 'own-1', name: 'Kept', copiedFrom: null })
  })
})
