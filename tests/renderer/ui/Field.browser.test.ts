import { userEvent } from 'vitest/browser';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import Holder from './Holder.svelte';

const oneLbKg = 0.45359237; // exact: NIST SP 811 (2008), appendix B

async function field(props: Partial<Parameters<typeof render<typeof Holder>>[1]> = {}) {
  const onSave = vi.fn<(value: number | null) => string | undefined>(() => undefined);
  const screen = await render(Holder, { onSave, ...props } as never);
  return { screen, onSave, input: screen.getByLabelText('Right seat') };
}

test('a mass typed in pounds says what it becomes, and Enter saves it in kilograms', async () => {
  const { screen, onSave, input } = await field();
  await input.fill('190 lb');
  await expect.element(screen.getByText('becomes 86.2 kg')).toBeVisible();
  expect(onSave).not.toHaveBeenCalled();
  await userEvent.keyboard('{Enter}');
  expect(onSave).toHaveBeenCalledExactlyOnceWith(190 * oneLbKg);
});

test('leaving the field saves too, and leaving it untouched saves nothing', async () => {
  const { screen, onSave, input } = await field();
  await input.click();
  await screen.getByRole('button', { name: 'Elsewhere' }).click();
  expect(onSave).not.toHaveBeenCalled();
  await input.fill('90');
  await screen.getByRole('button', { name: 'Elsewhere' }).click();
  expect(onSave).toHaveBeenCalledExactlyOnceWith(90);
  await expect.element(input).toHaveValue('90');
});

test('Enter and then leaving, while the library is still saving, saves once', async () => {
  const slow = Promise.withResolvers<undefined>();
  const onSave = vi.fn(() => slow.promise);
  const { screen, input } = await field({ onSave } as never);
  await input.fill('90');
  await userEvent.keyboard('{Enter}');
  await screen.getByRole('button', { name: 'Elsewhere' }).click();
  slow.resolve(undefined);
  await expect.element(input).toHaveValue('90');
  expect(onSave).toHaveBeenCalledExactlyOnceWith(90);
});

test('a mass above the limit is refused with value and range below the field, and the text is kept', async () => {
  const { screen, onSave, input } = await field();
  await input.fill('860');
  await userEvent.keyboard('{Enter}');
  await expect.element(screen.getByText(/860\skg is above what is allowed: 0 to 110\skg/)).toBeVisible();
  await expect.element(input).toHaveValue('860');
  await expect.element(input).toHaveAttribute('aria-invalid', 'true');
  await screen.getByRole('button', { name: 'Elsewhere' }).click();
  await expect.element(input).toHaveValue('860');
  expect(onSave).not.toHaveBeenCalled();
});

test('what is no mass is refused in words', async () => {
  const { screen, onSave, input } = await field();
  await input.fill('12 gal');
  await userEvent.keyboard('{Enter}');
  await expect.element(screen.getByText(/a mass was expected, in kg or lb/)).toBeVisible();
  expect(onSave).not.toHaveBeenCalled();
});

test('a comma that could part thousands offers only the reading that is allowed', async () => {
  const { screen, onSave, input } = await field();
  await input.fill('1,020');
  await userEvent.keyboard('{Enter}');
  await screen.getByRole('button', { name: 'Take it as 1.020 kg' }).click();
  expect(onSave).toHaveBeenCalledExactlyOnceWith(1.02);
});

test('Escape brings back what stood there', async () => {
  const { onSave, input } = await field();
  await input.fill('99');
  await userEvent.keyboard('{Escape}');
  await expect.element(input).toHaveValue('86');
  expect(onSave).not.toHaveBeenCalled();
});

test('what the library refuses stands below the field in its own words, and the text is kept', async () => {
  const { screen, input } = await field({ onSave: () => 'The station carries at most 100 kg.' } as never);
  await input.fill('105');
  await userEvent.keyboard('{Enter}');
  await expect.element(screen.getByText(/The station carries at most 100 kg/)).toBeVisible();
  await expect.element(input).toHaveValue('105');
});

test.each([
  ['{ArrowUp}', 86.5],
  ['{ArrowDown}', 85.5],
  ['{Shift>}{ArrowUp}{/Shift}', 91],
  ['{Shift>}{ArrowDown}{/Shift}', 81],
])('%s steps a mass of 86 kg to %s kg, shown at once and saved after a rest', async (keys, expected) => {
  const onTry = vi.fn();
  const { onSave, input } = await field({ onTry } as never);
  await input.click();
  await userEvent.keyboard(keys);
  expect(onTry).toHaveBeenLastCalledWith(expected);
  expect(onSave).not.toHaveBeenCalled();
  await expect.poll(() => onSave.mock.calls, { timeout: 2000 }).toEqual([[expected]]);
});

test('a person who weighs in pounds sees and types pounds', async () => {
  const { onSave, input } = await field({ units: { mass: 'lb' } } as never);
  // 86 kg is 189.597... lb; the field shows one digit more than the quantity's.
  await expect.element(input).toHaveValue('189.60');
  await input.fill('200');
  await userEvent.keyboard('{Enter}');
  expect(onSave).toHaveBeenCalledExactlyOnceWith(200 * oneLbKg);
});

test('text not put down yet survives a change that comes from elsewhere', async () => {
  const { screen, input } = await field();
  await input.fill('70');
  (screen.component as unknown as { fromOutside: (value: number) => void }).fromOutside(50);
  await expect.element(input).toHaveValue('70');
  await userEvent.keyboard('{Escape}');
  await expect.element(input).toHaveValue('50');
});

test('a doubted figure waits for a word, and is saved as the person settles it', async () => {
  const { screen, onSave, input } = await field({ usualSi: [20, 40] } as never);
  await input.fill('80');
  await userEvent.keyboard('{Enter}');
  await expect.element(screen.getByText(/80 looks like lb/)).toBeVisible();
  expect(onSave).not.toHaveBeenCalled();
  await screen.getByRole('button', { name: 'Keep kg' }).click();
  expect(onSave).toHaveBeenCalledExactlyOnceWith(80);
  await expect.element(input).toHaveValue('80');
});
