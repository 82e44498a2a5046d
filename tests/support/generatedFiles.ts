import { questions } from '#model/findings/finding.ts';
import { rules } from '#model/rules/registry.ts';
import { classroomJsonSchema } from '#model/schema/readFile.ts';
import { catalogueModule, cataloguePath } from './catalogue/generateCatalogue.ts';
import { demoRoom } from './demo/demoRoom.ts';

/** Files that are derived from others in the repository, with the text they should have. */
export function generatedFiles(): { path: string; text: string }[] {
  return [
    { path: 'shared-model/schema/generated/classroom.schema.json', text: `${JSON.stringify(classroomJsonSchema(), null, 2)}\n` },
    { path: cataloguePath, text: catalogueModule() },
    { path: 'shared-model/rules/generated/index.md', text: rulesIndex() },
    { path: 'client/demo/demo-room.json', text: `${JSON.stringify(demoRoom(), null, 1)}\n` },
  ];
}

function rulesIndex(): string {
  const lines = ['# Every check', '', 'Generated from the declarations by `npm run generate`.', ''];
  for (const [id, question] of Object.entries(questions)) {
    const group = rules.filter((rule) => rule.id.startsWith(`${id}/`));
    if (group.length === 0) continue;
    lines.push(`## ${question}`, '', '| check | asks | sources | options |', '| --- | --- | --- | --- |');
    for (const rule of group) {
      const options = Object.keys(rule.options.shape).join(', ') || 'none';
      lines.push(`| [${rule.id}](../${rule.id}.md) | ${rule.asks} | ${rule.sources.join(', ')} | ${options} |`);
    }
    lines.push('');
  }
  return lines.join('\n');
}
