import { writeFileSync } from 'node:fs'
import { validationPlot } from './validate/plot.ts'
import { validationText } from './validate/report.ts'

/** Compares every published row we can express with its prediction, and writes down how it came out. */
writeFileSync('tests/reference/VALIDATION.md', validationText())
writeFileSync('tests/reference/validation.svg', validationPlot())
process.stdout.write('tests/reference/VALIDATION.md and validation.svg are written\n')
