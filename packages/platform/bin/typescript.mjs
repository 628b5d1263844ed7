// Loads one of the platform's TypeScript modules from a plain script; only after the dependencies are installed.

/** @param {string} path relative to this folder. */
export async function loadTypeScript(path) {
  const { register } = await import('tsx/esm/api');
  register();
  return import(new URL(path, import.meta.url).href);
}
