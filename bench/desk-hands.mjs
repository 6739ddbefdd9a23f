/**
 * A person at the desk who has nothing but touch, keys or a mouse.
 *
 * Conventions: a press is a tap, a click or a key that does something; keys that only walk (Tab, arrows) are steps and
 * counted apart. Letters of a name are neither: whoever has no keyboard writes them on the one of the screen. A list
 * that the browser itself opens takes two presses, one to open it and one to pick.
 */

/** Most stops of a screen that keys walk along. */
const MOST_STOPS = 200;

/** Keys that write a mark at the place that has the focus, and the button that does the same. */
const MARKS = { stroke: 'x', 'ghost note': 'g', accent: 'a' };

/** Walks until a target has the focus. */
async function walkTo({ page, count }, target, key) {
  await target.waitFor();
  for (let i = 0; i < MOST_STOPS; i += 1) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press(key);
    count.steps += 1;
  }
  throw new Error(`No stop for keys: ${target}`);
}

/** A target is pressed: by `key` where keys are all there is, walking with `walk` before. */
async function act(hands, target, walk = 'Tab', key = 'Enter') {
  const { page, means, count } = hands;
  count.presses += 1;
  if (means === 'touch') return target.tap();
  if (means === 'mouse') return target.click();
  await walkTo(hands, target, walk);
  return page.keyboard.press(key);
}

/** Picks from a list that the browser opens. */
async function choose(hands, list, label) {
  const { page, means, count } = hands;
  if (means !== 'keys') {
    await act(hands, list);
    count.presses += 1;
    return list.selectOption({ label });
  }
  await walkTo(hands, list, 'Tab');
  for (let i = 0; i < MOST_STOPS; i += 1) {
    if ((await list.locator('option:checked').textContent()) === label) return undefined;
    await page.keyboard.press('ArrowDown');
    count.steps += 1;
  }
  throw new Error(`Not in the list: ${label}`);
}

/** Writes a mark at a place of the exercise that is written in: bar, beat and slot from 0. */
async function write(hands, place, mark) {
  const { page, means, count } = hands;
  const slots = page.locator('[data-exercise][data-chosen] [data-slot]');
  const slot = page.locator(`[data-exercise][data-chosen] [data-slot="${place}"]`);
  if (means !== 'keys') {
    await act(hands, slot);
    if (mark !== 'stroke') await act(hands, page.getByRole('button', { name: mark, exact: true }));
    return;
  }
  await walkTo(hands, slots.and(page.locator('[tabindex="0"]')), 'Tab');
  await page.keyboard.press('Home');
  await walkTo(hands, slot, 'ArrowRight');
  count.presses += 1;
  await page.keyboard.press(MARKS[mark]);
}

/** Gives the file that a button asks for. */
async function give(hands, button, file) {
  const asked = hands.page.waitForEvent('filechooser');
  await act(hands, button);
  await (await asked).setFiles(file);
}

/** Writes into a field. */
async function type(hands, field, text) {
  await act(hands, field, 'Tab', 'Shift');
  await hands.page.keyboard.type(text);
}

/** The person. */
export function handsOn(page, means) {
  const hands = { page, means, count: { presses: 0, steps: 0 } };
  return {
    count: hands.count,
    press: (target) => act(hands, target),
    pick: (target) => act(hands, target, 'ArrowDown'),
    choose: (list, label) => choose(hands, list, label),
    write: (place, mark) => write(hands, place, mark),
    give: (button, file) => give(hands, button, file),
    type: (field, text) => type(hands, field, text),
  };
}
