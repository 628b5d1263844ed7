import type { Plugin } from 'vite';
import { runnerImport } from 'vite';

const ours = /\/packages\/contract\/src\/(routes|uploads)\.ts$/;

/**
 * Reduces the contract's modules to their plain data while bundling.
 *
 * The browser needs each route's method and path; the server checks every request anyway, so
 * shipping the schemas and zod would cost tens of kilobytes for nothing. Types are untouched.
 */
export function contractData(): Plugin {
  return {
    name: 'garboard-contract-data',
    enforce: 'pre',
    async load(id) {
      if (!ours.test(id)) return null;
      const { module } = await runnerImport<Record<string, unknown>>(id, { configFile: false });
      return Object.entries(module)
        .filter(([, value]) => isData(value) && !isSchema(value))
        .map(([name, value]) => `export const ${name} = ${JSON.stringify(value, schemaAsTrue)};`)
        .join('\n');
    },
    // Zod tries whether it may compile code, which our content policy forbids and reports.
    generateBundle(_options, bundle) {
      for (const chunk of Object.values(bundle)) {
        if (chunk.type !== 'chunk') continue;
        const zod = Object.entries(chunk.modules).find(
          ([id, { renderedLength }]) => renderedLength > 0 && id.includes('/node_modules/zod/'),
        );
        if (zod)
          this.error(
            `${chunk.fileName} would hold ${zod[0]}. Move what the portal needs out of the schemas.`,
          );
      }
    },
  };
}

function isData(value: unknown): boolean {
  return typeof value === 'object' ? value !== null : typeof value !== 'function' && value !== undefined;
}

function isSchema(value: unknown): boolean {
  return typeof value === 'object' && value !== null && '_zod' in value;
}

function schemaAsTrue(_key: string, value: unknown): unknown {
  return isSchema(value) ? true : value;
}
