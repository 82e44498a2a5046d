import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/** Folder of the model -> what it may import. Everything else must be caught. */
const mayImport: Record<string, readonly string[]> = {
  units: [],
  geometry: ['units'],
  standards: ['units'],
  schema: ['units'],
  catalogue: ['units', 'schema'],
  scene: ['units', 'geometry', 'standards', 'schema', 'catalogue'],
  measures: ['units', 'geometry', 'standards', 'schema', 'catalogue', 'scene'],
  findings: ['units', 'geometry', 'standards', 'schema', 'catalogue', 'scene'],
  rules: ['units', 'geometry', 'standards', 'schema', 'catalogue', 'scene', 'measures', 'findings'],
  analysis: ['units', 'geometry', 'standards', 'schema', 'catalogue', 'scene', 'measures', 'findings', 'rules'],
  document: ['units', 'schema', 'findings'],
};
const folders = Object.keys(mayImport);
/** Packages a planted file of each place must not get away with. */
const packages: readonly [place: string, name: string][] = [
  ['shared-model/rules/way', 'yjs'],
  ['shared-model/rules/way', 'konva'],
  ['shared-model/rules/way', 'react'],
  ['shared-model/rules/way', 'node:fs'],
  ['shared-model/scene', 'yjs'],
  ['shared-model/document', 'react'],
  ['client/plan', 'yjs'],
  ['client/plan', '#server/main.ts'],
  ['client/sync', '#server/main.ts'],
  ['server/http', 'yjs'],
  ['server/http', '#client/main.tsx'],
  ['server/sync', 'konva'],
];
const here = resolve(import.meta.dirname, '../../..');
const tool = (name: string): string => join(here, 'node_modules', '.bin', name);

let house = '';
const plant = (path: string, text: string): void => {
  mkdirSync(dirname(join(house, path)), { recursive: true });
  writeFileSync(join(house, path), text);
};
/** "path: rule" of every complaint of the linter. */
let complaints: string[] = [];

const plantedEdge = (from: string, to: string): string => `shared-model/${from}/${from === 'rules' ? 'way/' : ''}planted-${to}.ts`;
const plantedPackage = (place: string, name: string): string => `${place}/planted-${name.replace(/[^a-z]/g, '')}.ts`;

beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), 'house-'));
  cpSync(join(here, 'biome.json'), join(house, 'biome.json'));
  for (const from of folders) {
    const up = from === 'rules' ? '../../' : '../';
    for (const to of folders) {
      if (to === from) continue;
      plant(plantedEdge(from, to), `import { thing } from '${up}${to}/thing.ts';\nexport const used = thing;\n`);
    }
  }
  for (const [place, name] of packages)
    plant(plantedPackage(place, name), `import * as thing from '${name}';\nexport const used = thing;\n`);
  plant('shared-model/rules/way/planted-rule.ts', "import { thing } from './narrow.ts';\nexport const used = thing;\n");
  plant('shared-model/rules/way/planted-other.ts', "import { thing } from '../reach/take.ts';\nexport const used = thing;\n");
  plant('shared-model/units/planted-long.ts', `${'export {};\n'.repeat(500)}`);
  plant('shared-model/units/one.ts', "import { two } from './two.ts';\nexport const one = (): number => two();\n");
  plant('shared-model/units/two.ts', "import { one } from './one.ts';\nexport const two = (): number => one();\n");
  const run = spawnSync(tool('biome'), ['lint', '--vcs-enabled=false', '--max-diagnostics=none', '--reporter=json', '.'], {
    cwd: house,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  const report = JSON.parse(run.stdout) as { diagnostics: { category: string; location: { path: string | { file: string } } }[] };
  complaints = report.diagnostics.map((d) => {
    const path = typeof d.location.path === 'string' ? d.location.path : d.location.path.file;
    return `${path}: ${d.category.replace('lint/', '')}`;
  });
}, 60_000);
afterAll(() => rmSync(house, { recursive: true, force: true }));

const isRefused = (path: string): boolean => complaints.includes(`${path}: style/noRestrictedImports`);

describe('the direction of dependencies', () => {
  it.each(folders)('%s imports only what it may', (from) => {
    const others = folders.filter((to) => to !== from);
    const refused = others.filter((to) => isRefused(plantedEdge(from, to)));
    expect(refused).toEqual(others.filter((to) => !mayImport[from]?.includes(to)));
  });
  it.each(packages)('%s cannot import %s', (place, name) => {
    expect(isRefused(plantedPackage(place, name))).toBe(true);
  });
  it('a rule cannot import a rule', () => {
    expect(isRefused('shared-model/rules/way/planted-rule.ts')).toBe(true);
    expect(isRefused('shared-model/rules/way/planted-other.ts')).toBe(true);
  });
  it('a circle of imports and a file past its size are caught', () => {
    expect(complaints).toContain('shared-model/units/one.ts: suspicious/noImportCycles');
    expect(complaints).toContain('shared-model/units/planted-long.ts: style/noExcessiveLinesPerFile');
  });
});

describe('the compiler as a guard', () => {
  const compile = (project: string, path: string, text: string): string => {
    const copy = mkdtempSync(join(tmpdir(), 'types-'));
    try {
      for (const name of ['package.json', 'shared-model', 'server', 'client/tsconfig.json'])
        cpSync(join(here, name), join(copy, name), { recursive: true });
      symlinkSync(join(here, 'node_modules'), join(copy, 'node_modules'));
      // Types go beside the copy, not into the shared cache of node_modules.
      for (const name of ['shared-model', 'server', 'client']) {
        const config = join(copy, name, 'tsconfig.json');
        const text = spawnSync('sed', ['s#../node_modules/.cache/types#../types-out#', config], { encoding: 'utf8' }).stdout;
        writeFileSync(config, text);
      }
      mkdirSync(dirname(join(copy, path)), { recursive: true });
      writeFileSync(join(copy, path), text);
      return spawnSync(tool('tsc'), ['-b', project], { cwd: copy, encoding: 'utf8' }).stdout;
    } finally {
      rmSync(copy, { recursive: true, force: true });
    }
  };

  it('the model does not compile with the page, the server, DOM or Node', { timeout: 60_000 }, () => {
    const planted = [
      'export const page = document.title;',
      'export const node = process.pid;',
      "export { start } from '../../server/planted.ts';",
    ].join('\n');
    const said = compile('shared-model', 'shared-model/units/planted.ts', planted);
    expect(said).toMatch(/planted\.ts\(1,.*Cannot find name 'document'/);
    expect(said).toMatch(/planted\.ts\(2,.*Cannot find name 'process'/);
    expect(said).toMatch(/planted\.ts\(3,/);
  });
});
