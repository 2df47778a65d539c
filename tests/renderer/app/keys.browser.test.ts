import { expect, test, vi } from 'vitest';
import { keyOf, Keys } from '../../../renderer/app/keys.svelte.ts';

test.each([
  [{ key: 'z', code: 'KeyZ', ctrlKey: true }, 'Ctrl+Z'],
  [{ key: 'Z', code: 'KeyZ', metaKey: true, shiftKey: true }, 'Ctrl+Shift+Z'],
  [{ key: '¡', code: 'Digit1', altKey: true }, 'Alt+1'],
  [{ key: '?', code: 'Slash', shiftKey: true }, '?'],
  [{ key: '?', code: 'Minus', shiftKey: true }, '?'],
  [{ key: 'Escape', code: 'Escape' }, 'Escape'],
])('a press of %o is %s', (press, name) => {
  expect(keyOf(new KeyboardEvent('keydown', press))).toBe(name);
});

test('a sign typed into a field is text, not a key', () => {
  const keys = new Keys();
  const run = vi.fn();
  keys.add([{ keys: '?', what: 'This list', where: 'Everywhere', run }]);
  const input = document.createElement('input');
  document.body.append(input);
  input.addEventListener('keydown', (event) => {
    keys.press(event);
  });
  input.dispatchEvent(
    new KeyboardEvent('keydown', { key: '?', code: 'Slash', shiftKey: true, bubbles: true }),
  );
  expect(run).not.toHaveBeenCalled();
  input.remove();
  keys.press(new KeyboardEvent('keydown', { key: '?', code: 'Slash', shiftKey: true }));
  expect(run).toHaveBeenCalledOnce();
});

test('the library is not undone while a field holds text that was not put down', () => {
  const keys = new Keys();
  const run = vi.fn();
  keys.add([{ keys: 'Ctrl+Z', what: 'Undo', where: 'Everywhere', run }]);
  const input = document.createElement('input');
  input.addEventListener('keydown', (event) => {
    keys.press(event);
  });
  const press = () => new KeyboardEvent('keydown', { key: 'z', code: 'KeyZ', ctrlKey: true });
  input.dataset['unsaved'] = '';
  input.dispatchEvent(press());
  expect(run).not.toHaveBeenCalled();
  delete input.dataset['unsaved'];
  input.dispatchEvent(press());
  expect(run).toHaveBeenCalledOnce();
});

test('keys work until they are taken away', () => {
  const keys = new Keys();
  const run = vi.fn();
  const takeAway = keys.add([{ keys: 'F2', what: 'Two', where: 'Here', run }]);
  takeAway();
  keys.press(new KeyboardEvent('keydown', { key: 'F2', code: 'F2' }));
  expect(run).not.toHaveBeenCalled();
  expect(keys.list).toEqual([]);
});
