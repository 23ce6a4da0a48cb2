import { defineConfig } from 'vite'

/** The command line: one file of our own code, dependencies left to node_modules. */
export default defineConfig({
  publicDir: false,
  build: {
    ssr: 'src/cli/leafgap.ts',
    outDir: 'build/cli',
    emptyOutDir: true,
    target: 'node20',
    rollupOptions: { output: { entryFileNames: 'leafgap.js', banner: '#!/usr/bin/env node' } },
  },
})
