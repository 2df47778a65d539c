import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'electron-vite';

// Each worker and each door of the program is an entry of its own: workers are started by file name
// from beside the host (main/workers/worker-url.ts), so nothing may bundle them away.
export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      rollupOptions: {
        input: {
          electron: 'main/hosts/electron.ts',
          loopback: 'main/hosts/loopback.ts',
          ask: 'main/hosts/ask.ts',
          library: 'main/workers/library.ts',
          rescue: 'main/workers/rescue.ts',
          'weather-import': 'main/workers/weather-import.ts',
          'weather-stretches': 'main/workers/weather-stretches.ts',
        },
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'parts/[name]-[hash].js' },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: 'main/hosts/preload.ts' },
        // A sandboxed preload cannot be an ES module.
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'renderer',
    plugins: [svelte({ configFile: '../svelte.config.js' })],
    worker: { format: 'es' },
    build: {
      outDir: 'out/renderer',
      emptyOutDir: true,
      assetsInlineLimit: 0,
      minify: true,
      rollupOptions: { input: { index: 'renderer/index.html' } },
    },
  },
});
