import { chmodSync } from 'node:fs'
import { defineConfig, type Plugin } from 'vite'

const FOLDER = 'build/cli'
const FILE = 'leafgap.js'

/** npx starts the file itself, so it has to be one that can be started. */
function executable(): Plugin {
  return { name: 'executable', closeBundle: () => chmodSync(`${FOLDER}/${FILE}`, 0o755) }
}

/** The command line: one file of our own code, dependencies left to node_modules. */
export default defineConfig({
  publicDir: false,
  plugins: [executable()],
  build: {
    ssr: 'src/cli/leafgap.ts',
    outDir: FOLDER,
    emptyOutDir: true,
    target: 'node20',
    rollupOptions: { output: { entryFileNames: FILE, banner: '#!/usr/bin/env node' } },
  },
})
