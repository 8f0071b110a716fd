import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    environment: 'node',
    testTimeout: 180_000,
    hookTimeout: 180_000,
    passWithNoTests: false,
    // The default leaves one core of two idle.
    maxWorkers: '100%',
  },
});
