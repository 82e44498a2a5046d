import { judgesPracticalLife } from '#model/measures/order/classOptions.ts';
import { withPracticalLife } from '../front/practicalLife.ts';
import { Tick } from '../ui/Tick.tsx';
import type { Part } from './part.ts';

/** Whether practical life, which many classes lay out freely, is held to the order as the other areas are. */
export function OrderPart({ classroom, change }: Part) {
  const { options } = classroom;
  return (
    <fieldset className="form-part">
      <legend>Order on the shelves</legend>
      <p className="aside">Practical life is often laid out freely, so its order is judged only where the class wants it.</p>
      <Tick
        isTicked={judgesPracticalLife(classroom)}
        onChange={(isOn) => change({ options: withPracticalLife(options, 'order/sequence', isOn) })}
      >
        Judge practical life too: its easier steps stand before its harder ones
      </Tick>
      <Tick
        isTicked={options['order/strand']?.practicalLife === true}
        onChange={(isOn) => change({ options: withPracticalLife(options, 'order/strand', isOn) })}
      >
        Judge practical life too: what belongs to one strand stands together
      </Tick>
    </fieldset>
  );
}
