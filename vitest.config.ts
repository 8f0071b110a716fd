import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    environment: 'node',
    // Two at once on two cores: by default one core is left idle while a test waits.
    maxWorkers: '100%',
    testTimeout: 180_000,
    hookTimeout: 180_000,
    passWithNoTests: false,
  },
});
