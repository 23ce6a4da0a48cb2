import { writeFileSync } from 'node:fs'
import { ANCHOR_FILE, trainedFile } from './anchor/train.ts'

/** Writes the correction towards published measurements again: after a change of the engine or of the rows. */
writeFileSync(ANCHOR_FILE, trainedFile())
