import { userEvent } from 'vitest/browser';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import GripOnAxis from './GripOnAxis.svelte';

async function grip() {
  const onDrag = vi.fn();
  const onCommit = vi.fn();
  const screen = await render(GripOnAxis, { onDrag, onCommit });
  const slider = screen.getByRole('slider', { name: 'Reading' });
  const element = slider.element();
  const middle = () => {
    const box = element.getBoundingClientRect();
    return { x: box.left + box.width / 2, y: box.top + box.height / 2 };
  };
  const send = (type: string, x: number, y: number) =>
    element.dispatchEvent(
      new PointerEvent(type, { clientX: x, clientY: y, pointerId: 1, button: 0, bubbles: true }),
    );
  // A made-up pointer cannot be captured; the grip asks for it all the same.
  Object.assign(element, { setPointerCapture: () => undefined });
  return { onDrag, onCommit, slider, middle, send };
}

// The axis is 100 px long for 10 units: 30 px are 3 units.
test('a drag repaints at once and saves once, when it is let go', async () => {
  const { onDrag, onCommit, slider, middle, send } = await grip();
  const { x, y } = middle();
  send('pointerdown', x, y);
  send('pointermove', x + 10, y);
  send('pointermove', x + 31, y + 4);
  expect(onDrag).toHaveBeenLastCalledWith(7);
  expect(onCommit).not.toHaveBeenCalled();
  send('pointerup', x + 31, y + 4);
  expect(onCommit).toHaveBeenCalledExactlyOnceWith(7);
  await expect.element(slider).toHaveAttribute('aria-valuenow', '7');
  await expect.element(slider).toHaveAttribute('aria-valuetext', 'reading 7');
});

test('a press without a move saves nothing, and taking it off its middle does not make it jump', async () => {
  const { onDrag, onCommit, middle, send } = await grip();
  const { x, y } = middle();
  send('pointerdown', x + 6, y);
  send('pointermove', x + 7, y);
  expect(onDrag).toHaveBeenLastCalledWith(4);
  send('pointerup', x + 7, y);
  expect(onCommit).not.toHaveBeenCalled();
});

test('Escape during a drag brings back where it stood', async () => {
  const { onDrag, onCommit, slider, middle, send } = await grip();
  const { x, y } = middle();
  send('pointerdown', x, y);
  send('pointermove', x + 30, y);
  await userEvent.keyboard('{Escape}');
  expect(onDrag).toHaveBeenLastCalledWith(4);
  send('pointerup', x + 30, y);
  expect(onCommit).not.toHaveBeenCalled();
  await expect.element(slider).toHaveAttribute('aria-valuenow', '4');
});

test.each([
  ['{ArrowRight}', 4.5],
  ['{ArrowDown}', 3.5],
  ['{Shift>}{ArrowUp}{/Shift}', 9],
  ['{Home}', 0],
  ['{End}', 10],
])('%s moves it from 4 to %s and saves once after a rest', async (key, to) => {
  const { onDrag, onCommit, slider } = await grip();
  (slider.element() as SVGElement).focus();
  await userEvent.keyboard(key);
  expect(onDrag).toHaveBeenLastCalledWith(to);
  expect(onCommit).not.toHaveBeenCalled();
  await expect.poll(() => onCommit.mock.calls, { timeout: 2000 }).toEqual([[to]]);
});
