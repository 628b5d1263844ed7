import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { contractData } from './build/contract-data.ts';
import { offlineShell } from './build/offline-shell.ts';

const api = { target: 'http://127.0.0.1:3000', changeOrigin: false };

/** The API server serves `dist` under a policy that allows no inline script or style, so nothing may be inlined. */
export default defineConfig({
  plugins: [contractData(), react(), offlineShell()],
  base: '/',
  build: {
    outDir: 'dist',
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: { host: '127.0.0.1', proxy: { '/v1': api, '/docs': api, '/openapi.json': api } },
});
