import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'

/** The page: static files that work from any folder, and offline after the first visit. */
export default defineConfig({
  base: './',
  publicDir: 'src/assets/public',
  plugins: [
    react(),
    VitePWA({
      registerType: 'autoUpdate',
      injectRegister: 'script-defer',
      manifest: {
        name: 'Leafgap',
        short_name: 'Leafgap',
        description: 'See how quiet a room can be made, what room is left and what it takes.',
        display: 'standalone',
        background_color: '#f5f2ea',
        theme_color: '#fbfaf6',
        icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,woff2,ttf,json,wasm,png}'],
        maximumFileSizeToCacheInBytes: 8_000_000,
        cleanupOutdatedCaches: true,
      },
    }),
  ],
  // The PDF reader's worker brings modules of its own.
  worker: { format: 'es' },
  build: {
    outDir: 'build/app',
    emptyOutDir: true,
    target: 'es2023',
    chunkSizeWarningLimit: 2000,
  },
})
