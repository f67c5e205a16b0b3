/// One terminal read more than once: the readings that are set aside, each to be taken away again.

import type { JSX } from "preact";
import { Printed } from "../look/figure";
import { unitWords } from "../look/digits";
import { spreadOf } from "./session";

/// @param now  what stands in the field, with its unit; undefined while nothing does.
export function Repeats(props: { repeats: string[]; now: string | undefined; takeAway: (at: number) => void }): JSX.Element | null {
  const { repeats, now } = props;
  if (repeats.length === 0) return null;
  const all = now === undefined ? repeats : [...repeats, now];
  const spread = spreadOf(all);
  return (
    <div class="repeats" role="group" aria-label="Read so far at this terminal">
      <ul class="chips">
        {repeats.map((text, i) => (
          <li key={`${i} ${text}`}>
            <button type="button" class="chip" aria-label={`Take away ${unitWords(text)}`} onClick={() => props.takeAway(i)}>
              <Printed text={text} /><span class="chip-cross" aria-hidden="true">×</span>
            </button>
          </li>
        ))}
      </ul>
      <p class="help">{all.length === 1 ? "1 reading set aside. Flex the lead and read again." : <>{all.length} readings{spread === undefined ? "" : <>, spread <strong><Printed text={spread} /></strong></>}. Judged by their mean.</>}</p>
    </div>
  );
}
