import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'dashboard',
  plugins: [preact()],
  build: { outDir: '../dist/dashboard', emptyOutDir: true, target: 'es2022' },
});
