import { registerHooks } from 'node:module';
import { pathToFileURL } from 'node:url';

// Runs the built Electron host with the double in place of `electron`:
//   node tests/desktop/electron-double/run.ts out/main/electron.js --library FILE

const double = new URL('./electron.ts', import.meta.url).href;
registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'electron' ? { url: double, shortCircuit: true } : next(specifier, context),
});
const { app } = await import('./electron.ts');
const program = process.argv[2] ?? '';
process.argv.splice(1, 1);
// Electron becomes ready only after the program's main module is through: one that waits for it at the top hangs.
await import(pathToFileURL(program).href);
app.becomeReady();
