import type { Source } from './source.ts';

const noJurisdiction = { clause: '', jurisdiction: '' };
const own = { ...noJurisdiction, edition: '', status: 'own' } as const;
const handbook = { ...noJurisdiction, status: 'found' } as const;

/** Sources that are no row of the index: handbooks, growth and body data, and what is nobody's standard. */
export const generalRows: Readonly<Record<string, Source>> = {
  'class rule': { ...own, document: 'Class rule' },
  'common practice': { ...own, document: 'Common practice, no source' },
  H1914: { ...handbook, document: "Dr. Montessori's Own Handbook", edition: '1914' },
  M1912: { ...handbook, document: 'The Montessori Method', edition: '1912' },
  S1917: { ...handbook, document: 'The Advanced Montessori Method: Spontaneous Activity in Education', edition: '1917' },
  E1917: { ...handbook, document: 'The Advanced Montessori Method: The Montessori Elementary Material', edition: '1917' },
  CDC2000: {
    document: 'CDC Growth Charts, stature and weight for age, 2 to 20 years',
    clause: 'L, M, S tables',
    edition: '2000',
    jurisdiction: 'USA',
    status: 'found',
  },
  'UM-HSRI-77-17': {
    document: 'Anthropometry of Infants, Children and Youths to Age 18 for Product Safety Design, UM-HSRI-77-17',
    clause: 'individual records, ratios to stature fitted by us',
    edition: '1977',
    jurisdiction: 'USA',
    status: 'found',
    secondHand: true,
  },
  'D-carry': {
    document: 'Backpack advice of health organisations, as reported by the press; no limit for carrying in the hands was found',
    clause: '10 to 20 percent of body mass',
    edition: '2018',
    jurisdiction: 'USA',
    status: 'part-found',
    secondHand: true,
  },
};
