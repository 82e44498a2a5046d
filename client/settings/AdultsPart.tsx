import { NumberField } from '../ui/NumberField.tsx';
import type { Part } from './part.ts';

const roles = [
  { role: 'lead', text: 'Lead guides' },
  { role: 'qualified', text: 'Other qualified adults' },
  { role: 'assistant', text: 'Assistants' },
] as const;

export function AdultsPart({ classroom, change }: Part) {
  const { adults } = classroom;
  const countOf = (role: string) => adults.reduce((sum, entry) => (entry.role === role ? sum + entry.count : sum), 0);

  function setCount(role: (typeof roles)[number]['role'], count: number) {
    const others = adults.filter((entry) => entry.role !== role);
    const order = roles.map((entry) => entry.role as string);
    const next = [...others, { role, count }].sort((p, q) => order.indexOf(p.role) - order.indexOf(q.role));
    change({ adults: next.filter((entry) => entry.count > 0) });
  }

  return (
    <fieldset className="form-part">
      <legend>The adults with the children</legend>
      <div className="form-row">
        {roles.map(({ role, text }) => (
          <NumberField
            key={role}
            label={text}
            value={countOf(role)}
            least={0}
            most={1000}
            onCommit={(count) => count !== null && setCount(role, count)}
          />
        ))}
      </div>
    </fieldset>
  );
}
