import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';

/** Builds the dashboard into dist/dashboard; in development its API calls go to the local service. */
export default defineConfig({
  root: 'dashboard',
  plugins: [preact()],
  server: { proxy: { '/api': 'http://127.0.0.1:8080' } },
  build: { outDir: '../dist/dashboard', emptyOutDir: true, target: 'es2022' },
});
