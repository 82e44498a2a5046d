import { openBrowser, openPerson, startServer } from '#tests/support/browser.ts';

/** Milliseconds from navigation to the drawn plan of the demo room: in a fresh browser, and again with everything kept. */
export async function timeToDrawnPlan(rounds: number): Promise<{ cold: number[]; warm: number[] }> {
  const server = await startServer();
  const browser = await openBrowser();
  const cold: number[] = [];
  const warm: number[] = [];
  try {
    for (let round = 0; round < rounds; round++) {
      const person = await openPerson(browser, 'wide', true);
      const page = await person.newPage();
      const drawn = async (): Promise<number> => {
        const mark = await page.waitForFunction(() => performance.getEntriesByName('plan-drawn')[0]?.startTime, undefined, {
          timeout: 20_000,
        });
        return (await mark.jsonValue()) as number;
      };
      await page.goto(server.address);
      cold.push(await drawn());
      await page.waitForTimeout(1500);
      await page.reload();
      warm.push(await drawn());
      await person.close();
    }
  } finally {
    await browser.close();
    await server.stop();
  }
  return { cold, warm };
}
