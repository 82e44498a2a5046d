import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import pixelmatch from 'pixelmatch';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';

const reviewed = resolve(import.meta.dirname, '../browser/look');
const madeWith = join(reviewed, 'made-with.txt');
/** `LOWSHELF_LOOK=keep` keeps the pictures of now, to be looked at by a person before they are committed. */
const keeps = process.env.LOWSHELF_LOOK === 'keep';

/** px on a side that are seen as one: letters drawn a little otherwise on another machine are no other look */
const BLOCK = 4;
/** How far apart two colours may lie, of 1 for black and white. */
const NEAR = 0.12;

/** Share of a page that may look otherwise: a date, a word; not a panel that is gone or a line that lies elsewhere. */
const OTHER = 0.02;
/** With another browser or other letters every word lies a little elsewhere. */
const OTHER_ELSEWHERE = 0.15;

interface Look {
  /** Of the page, 0 to 1, what looks otherwise than in the picture that was reviewed and kept. */
  readonly share: number;
  /** What may. */
  readonly most: number;
}

/** @throws without a picture that was kept */
async function lookOf(page: Page, name: string): Promise<Look> {
  const engine = await engineOf(page);
  const shot = await page.screenshot({ animations: 'disabled', caret: 'hide', scale: 'css' });
  const file = join(reviewed, `${name}.png`);
  if (keeps) {
    mkdirSync(reviewed, { recursive: true });
    writeFileSync(file, shot);
    writeFileSync(madeWith, `${engine}\n`);
    return { share: 0, most: OTHER };
  }
  if (!existsSync(file)) throw new Error(`${file} is missing: keep it with LOWSHELF_LOOK=keep, look at it, commit it`);
  const [was, is] = [shrunk(PNG.sync.read(readFileSync(file))), shrunk(PNG.sync.read(shot))];
  const most = readFileSync(madeWith, 'utf8').trim() === engine ? OTHER : OTHER_ELSEWHERE;
  if (was.width !== is.width || was.height !== is.height) return { share: 1, most };
  const share = pixelmatch(was.data, is.data, null, is.width, is.height, { threshold: NEAR, includeAA: true }) / (is.width * is.height);
  if (share > 0) writeFileSync(join(tmpdir(), `lowshelf-look-${name}.png`), shot);
  return { share, most };
}

/** The same, of a page that may still be drawing: looked at again for some seconds while it looks otherwise. */
export async function settledLook(page: Page, name: string): Promise<Look> {
  for (let again = 0; ; again++) {
    const look = await lookOf(page, name);
    if (look.share <= look.most || again === 5) return look;
    await page.waitForTimeout(1_000);
  }
}

/** The browser's version and how long it writes a line with the letters that this machine has. */
async function engineOf(page: Page): Promise<string> {
  const long = await page.evaluate(() => {
    const pen = document.createElement('canvas').getContext('2d');
    if (!pen) return 0;
    pen.font = `16px ${getComputedStyle(document.body).fontFamily}`;
    return pen.measureText('Washing hands at a low stand, 0.74 m').width;
  });
  return `${page.context().browser()?.version()}, ${long.toFixed(2)} px`;
}

/** Each block of pixels as one of their mean colour. */
function shrunk({ data, width, height }: Pick<PNG, 'data' | 'width' | 'height'>) {
  const [wide, high] = [Math.floor(width / BLOCK), Math.floor(height / BLOCK)];
  const into = new Uint8Array(wide * high * 4);
  for (let y = 0; y < high; y++)
    for (let x = 0; x < wide; x++)
      for (let channel = 0; channel < 4; channel++) {
        let sum = 0;
        for (let dy = 0; dy < BLOCK; dy++)
          for (let dx = 0; dx < BLOCK; dx++) sum += data[((y * BLOCK + dy) * width + x * BLOCK + dx) * 4 + channel] ?? 0;
        into[(y * wide + x) * 4 + channel] = Math.round(sum / BLOCK ** 2);
      }
  return { data: into, width: wide, height: high };
}
