import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    environment: 'node',
    testTimeout: 180_000,
    hookTimeout: 180_000,
    passWithNoTests: false,
    // Patience only: a busy machine is no failure.
    expect: { poll: { timeout: 30_000 } },
    // The default leaves one core of two idle.
    maxWorkers: '100%',
  },
});
