import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import preact from '@preact/preset-vite';
import { defineConfig, type Plugin } from 'vite';

const worker = 'worker.js';

/** Tells the service worker which files make the dashboard; another build is another revision. */
function offlineFiles(publicDir: string): Plugin {
  return {
    name: 'offline-files',
    apply: 'build',
    enforce: 'post',
    generateBundle(_options, bundle) {
      const built = bundle[worker];
      if (built?.type !== 'chunk')
        throw new Error(`${worker} was not built: see build.rolldownOptions.input`);
      const files = Object.values(bundle).filter((file) => file !== built);
      const others = readdirSync(publicDir);
      const names = [...files.map(({ fileName }) => fileName), ...others].sort();
      const hash = createHash('sha256').update(names.join());
      for (const name of others) hash.update(readFileSync(join(publicDir, name)));
      for (const file of files) hash.update(file.type === 'chunk' ? file.code : file.source);
      const filled = { revision: hash.digest('hex').slice(0, 12), paths: names.map((name) => `/${name}`) };
      built.code = `const offlineFiles = ${JSON.stringify(filled)};\n${built.code}`;
    },
  };
}

/** A third of the bytes on the way to a phone; the names carry a hash, so that file and copy never differ. */
const compressedCopies: Plugin = {
  name: 'compressed-copies',
  apply: 'build',
  writeBundle({ dir = '' }, bundle) {
    for (const { fileName, ...file } of Object.values(bundle)) {
      if (!/^assets\/.*\.(js|css)$/.test(fileName)) continue;
      const content = 'code' in file ? file.code : file.source;
      writeFileSync(join(dir, `${fileName}.gz`), gzipSync(content, { level: 9 }));
    }
  },
};

/** Builds the dashboard into dist/dashboard; in development its API calls go to the local service. */
export default defineConfig({
  root: 'dashboard',
  plugins: [preact(), offlineFiles('dashboard/public'), compressedCopies],
  server: { proxy: { '/api': 'http://127.0.0.1:8080' } },
  build: {
    outDir: '../dist/dashboard',
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: {
      input: { index: 'dashboard/index.html', worker: 'dashboard/offline/worker.ts' },
      output: {
        entryFileNames: ({ name }) => (name === 'worker' ? worker : 'assets/[name]-[hash].js'),
      },
      // The model is pure: what a page does not use of it is left out.
      treeshake: { moduleSideEffects: (id) => !id.includes('/services/model/') },
    },
  },
});
