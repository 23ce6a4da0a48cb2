import { defineConfig } from 'vitest/config'

/** Tests in a real browser: one after the other, on the built page. */
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: ['tests/support/buildPage.ts'],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
})
