// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keepFocus } from '#client/frame/keepFocus.ts';

let stop: () => void;

const one = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (!found) throw new Error(`nothing is ${selector}`);
  return found;
};
/** What is drawn anew, and whoever watches it once the press that did it is over. */
const drawn = (): Promise<void> => new Promise((resolve) => setTimeout(() => setTimeout(resolve)));
const focused = (): string | undefined => document.activeElement?.id;

beforeEach(() => {
  document.body.innerHTML = `
    <button id="elsewhere"></button>
    <div id="sheet">
    <div class="checks">
      <h2 id="checks">Checks</h2>
      <section>
        <h3 id="way">Can everyone get through?</h3>
        <section class="mend"><button id="stop"></button></section>
        <ul>
          <li class="finding"><button id="first"></button><button id="do-first"></button></li>
          <li class="finding"><button id="second"></button><button id="do-second"></button></li>
        </ul>
      </section>
      <section id="left">
        <h3 id="left-title">Left as they are</h3>
        <ul><li class="finding"><button id="take-up"></button></li></ul>
      </section>
    </div>
      <div class="plan"><div class="plan-paper" id="paper" tabindex="0"></div><div class="draft"><input id="remark"></div></div>
      <table>
        <tbody>
          <tr><td><button id="washing"></button></td><td><button id="place-washing"></button></td></tr>
          <tr><td><button id="sweeping"></button></td><td><button id="place-sweeping"></button></td></tr>
        </tbody>
      </table>
    </div>`;
  stop = keepFocus(one('#sheet'));
});
afterEach(() => stop());

describe('focus in the checks column', () => {
  it.each([
    ['a verb that closes', '#do-first', ['#do-first'], 'first'],
    ['a finding that is mended', '#do-first', ['li.finding'], 'second'],
    ['the last finding of a list', '#do-second', ['li.finding:last-child'], 'first'],
    ['the only one left', '#do-first', ['ul'], 'way'],
    ['words that a tool asked for', '#remark', ['.draft'], 'paper'],
    ['a verb of a row that is done', '#place-washing', ['#place-washing'], 'washing'],
    ['a row that goes elsewhere', '#place-washing', ['tr'], 'sweeping'],
    ['the last row of a part of the table', '#place-sweeping', ['tr:last-child'], 'washing'],
    ['the last that was left as it is', '#take-up', ['#left'], 'checks'],
  ])('goes on from %s', async (_, from, removed, to) => {
    one(from).focus();
    for (const selector of removed) one(selector).remove();
    await drawn();
    expect(focused()).toBe(to);
  });

  it('waits for the end of the press that did it: Enter would press the next one too', async () => {
    one('#do-first').focus();
    one('li.finding').remove();
    await Promise.resolve();
    expect(focused()).toBe('');
    await drawn();
    expect(focused()).toBe('second');
  });

  it('goes from work that ended to what came of it', async () => {
    one('#stop').focus();
    one('.mend').innerHTML = '<p id="words" data-told>Found</p><button id="do"></button>';
    await drawn();
    expect([focused(), one('#words').tabIndex]).toEqual(['words', -1]);
  });

  it('goes to what can be done where nothing is told yet', async () => {
    one('#stop').focus();
    one('.mend').innerHTML = '<button id="again"></button>';
    await drawn();
    expect(focused()).toBe('again');
  });

  it('is not taken from where somebody went meanwhile, nor given to who clicked beside everything', async () => {
    one('#do-first').focus();
    one('#elsewhere').focus();
    one('li.finding').remove();
    await drawn();
    expect(focused()).toBe('elsewhere');
    one('#do-second').focus();
    one('#do-second').blur();
    await drawn();
    one('ul').remove();
    await drawn();
    expect(document.activeElement).toBe(document.body);
  });
});
