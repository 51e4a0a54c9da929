import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { compareOptions, runCompare } from '../../../../app/tools/compare/run-compare.ts';
import { recordAsText, recordFrom } from '../../../../app/tools/plan/plan-record.ts';
import { nothingChanged } from '../../../support/compare/changed.ts';
import {
  lastStep,
  photographedPlan,
  plannedSmall,
} from '../../../support/compare/photographed-plan.ts';
import { anyScene } from '../../../support/compare/scene.ts';
import { heard } from '../../../support/plan/run-command.ts';

let dir = '';
const file = (name: string): string => join(dir, name);

async function ran(...args: string[]) {
  const [out, wrong] = [heard(process.stdout), heard(process.stderr)];
  try {
    const code = await runCompare(args);
    return { code, stdout: out.join(''), stderr: wrong.join('') };
  } finally {
    vi.restoreAllMocks();
  }
}

beforeAll(async () => {
  dir = await mkdtemp(join(tmpdir(), 'compare-'));
  const paints = [
    'py43-yellow-ochre',
    'pb29-ultramarine-blue',
    'pbr7-burnt-sienna',
    'pg7-phthalocyanine-green',
  ];
  const picture = await plannedSmall('tests/fixtures/mountain-snow.jpg', paints);
  const { reading, plan, slotMap } = picture;
  const record = recordAsText(reading, plan, slotMap, new Uint8Array(slotMap.length).fill(128));
  expect(recordFrom(record)?.plan).toEqual(plan);
  expect(recordFrom(record)?.slotMap).toEqual(slotMap);
  await writeFile(file('plan.json'), JSON.stringify({ record }));
  await writeFile(file('old.json'), '{}');
  await writeFile(file('no.json'), 'no');
  const { shot } = await photographedPlan(
    picture,
    lastStep(plan),
    nothingChanged,
    anyScene(1, 1000),
  );
  await writeFile(file('sheet.jpg'), shot.jpeg);
  await writeFile(file('corners'), shot.corners.flat().join(','));
});

afterAll(() => rm(dir, { recursive: true, force: true }));

test('a photo and its plan in, figures and sentences out', async () => {
  const { code, stdout, stderr } = await ran(file('sheet.jpg'), '--plan', file('plan.json'));
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  const json = JSON.parse(stdout);
  expect(json).toMatchObject({
    refused: null,
    advice: [],
    summary: 'Good: leave it. All that counts is as planned.',
  });
  expect(json.shapes.length).toBeGreaterThan(3);
  expect(json.shapes[0].text).toMatch(/ is as planned\.$/);
  expect(json.whole.text).toMatch(/has its planned value/);
});

test('with corners, at a stage, at satin', async () => {
  const corners = await readFile(file('corners'), 'utf8');
  const { stdout } = await ran(
    file('sheet.jpg'),
    '--plan',
    file('plan.json'),
    '--corners',
    corners,
    '--stage',
    '1',
  );
  expect(JSON.parse(stdout)).toMatchObject({ step: 1, refused: 'nothing-painted' });
  const shiny = await ran(file('sheet.jpg'), '--plan', file('plan.json'), '--wetness', 'shiny');
  expect(JSON.parse(shiny.stdout).summary).toMatch(/^Wait until the shine has gone/);
});

test.each([
  [[], 'no photo given'],
  [['a.jpg'], '--plan is missing'],
  [['a.jpg', 'b.jpg', '--plan', 'p'], 'one photo at a time, not also "b.jpg"'],
  [
    ['a.jpg', '--plan', 'p', '--stage', '0'],
    '--stage must be the number of a step of the plan, not "0"',
  ],
  [['a.jpg', '--plan', 'p', '--corners', '1,2,3'], '--corners must be four places'],
  [
    ['a.jpg', '--plan', 'p', '--wetness', 'moist'],
    '--wetness must be dry or satin or shiny, not "moist"',
  ],
  [['a.jpg', '--plan', 'p', '--blue', '1'], "Unknown option '--blue'"],
])('%j is one line', (args, line) => {
  expect(() => compareOptions(args)).toThrow(line);
});

test.each([
  [() => ['gone.jpg', '--plan', file('plan.json')], 'gone.jpg: there is no such file'],
  [() => [file('sheet.jpg'), '--plan', 'gone.json'], '--plan gone.json: there is no such file'],
  [() => [file('sheet.jpg'), '--plan', file('no.json')], 'this is not JSON'],
  [
    () => [file('sheet.jpg'), '--plan', file('old.json')],
    'it has no record of the sheet; make it again',
  ],
  [() => [file('sheet.jpg'), '--plan', file('plan.json'), '--stage', '99'], 'steps, not 99'],
  [
    () => [file('sheet.jpg'), '--plan', file('plan.json'), '--corners', '0,0,1,1,1,0,0,1'],
    '--corners do not go round a sheet',
  ],
])('a file or place that will not do is one line, code 2', async (args, line) => {
  const { code, stdout, stderr } = await ran(...args());
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toMatch(/^compare: .*\n$/);
  expect(stderr).toContain(line);
});
