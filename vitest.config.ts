import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**'],
    // By default one processor is kept free: on two that would be half of them.
    maxWorkers: '100%',
    testTimeout: 60000,
  },
})
