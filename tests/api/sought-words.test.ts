import { exchanged, nearestWords, slips, soughtWords } from '@garboard/core/catalogue/sought-words';
import { withSynonyms } from '@garboard/trade/catalogue/synonyms';
import { describe, expect, it } from 'vitest';

describe('the words of a question', () => {
  it.each([
    ['ABYC A-1', ['abyc', 'a1']],
    ['33 CFR 183.425', ['33', 'cfr', '183.425']],
    ['float-switch, loose!', ['float', 'switch', 'loose']],
    ['e\u0301chelle', ['échelle']],
    ['ברז ים', ['ברז', 'ים']],
    ["'; -- \\ & | ! ( ) :*", []],
    ['x '.repeat(40), Array.from({ length: 12 }, () => 'x')],
  ])('of “%s” are %j', (typed, words) => expect(soughtWords(typed)).toEqual(words));

  it('are as many slips from others as letters were left out, put in, changed or exchanged', () => {
    expect(slips('anchor', 'anchor')).toEqual({ whole: 0, begun: 0 });
    expect(slips('acnhor', 'anchor').whole).toBe(1);
    expect(slips('ancor', 'anchor').whole).toBe(1);
    expect(slips('annchor', 'anchor').whole).toBe(1);
    expect(slips('amchor', 'anchor').whole).toBe(1);
    expect(slips('extinguj', 'extinguisher')).toEqual({ whole: 5, begun: 1 });
    expect(slips('', 'anchor').whole).toBe(6);
    expect(exchanged('gsa')).toEqual(['sga', 'gas']);
  });

  it('misspelt, are taken for the nearest and for nothing when nothing is near', () => {
    expect(nearestWords('flaot', ['flat', 'float', 'boat'], false)[0]).toBe('float');
    expect(nearestWords('isolater', ['isolate', 'isolated', 'isolator'], false)[0]).toBe('isolator');
    expect(nearestWords('extingiu', ['extinguisher', 'existing'], true)).toEqual(['extinguisher']);
    expect(nearestWords('extingiu', ['extinguisher'], false)).toEqual([]);
    expect(nearestWords('zzq', ['gas', 'oil'], true)).toEqual([]);
  });

  it('stand for others of the same meaning, both ways and in the plural', () => {
    expect(withSynonyms('zincs')).toEqual(['zincs', 'anode']);
    expect(withSynonyms('petrol')).toEqual(['petrol', 'gasoline']);
    expect(withSynonyms('gasoline')).toEqual(['gasoline', 'petrol']);
    expect(withSynonyms('keel')).toEqual(['keel']);
  });
});
