import { sourceText } from '#model/standards/sources.ts';
import { useClassroom } from '../session/hooks.ts';
import { sayForeignWays } from './foreignWays.ts';

/** The sources that the findings above refer to by letter. */
export function SourceList({ letters }: { letters: ReadonlyMap<string, string> }) {
  const { ruleSet } = useClassroom();
  if (letters.size === 0) return null;
  const foreign = sayForeignWays(ruleSet, letters);
  return (
    <div className="sources aside">
      <h3 className="only-heard">Sources</h3>
      <ul>
        {[...letters].map(([source, letter]) => (
          <li key={source}>
            <b>{letter}</b> {sourceText(source)}
          </li>
        ))}
      </ul>
      {foreign && <p>{foreign}</p>}
      <p>Figures help to plan. Your local authority decides.</p>
    </div>
  );
}
