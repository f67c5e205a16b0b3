/// Which meter is in the hand: said once for a group, kept on this device.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import type { Field } from "../api/types";
import type { InstrumentLine } from "../api/views";
import { unitWords } from "../look/digits";

export interface Meter { instrument: string; range: string; leads: string }

export function MeterChoice(props: { instruments: InstrumentLine[]; fields: Field[]; meter: Meter; choose: (change: Partial<Meter>) => void }): JSX.Element {
  const { instruments, fields, meter, choose } = props;
  const chosen = instruments.find((i) => i.id === meter.instrument);
  // Open until the meter has been said once; it stays open while it is being said.
  const [unsaid] = useState(chosen === undefined);
  const leads = fields.find((f) => f.key === "leads");
  const label = (key: string): string => fields.find((f) => f.key === key)?.label ?? key;
  return (
    <details class="more meter-more" open={unsaid}>
      <summary>{chosen ? <>{label("instrument")}: <strong>{chosen.name}{meter.range ? `, ${unitWords(meter.range)}` : ""}</strong></> : label("instrument")}</summary>
      <div class="meter">
        <div class="field">
          <label for="instrument">{label("instrument")}</label>
          <select id="instrument" value={chosen?.id ?? ""} onChange={(e) => choose({ instrument: e.currentTarget.value, range: "" })}>
            <option value="">Not said</option>
            {instruments.map((i) => <option key={i.id} value={i.id}>{i.name}{i.found_bad ? " (found bad)" : ""}</option>)}
          </select>
        </div>
        {chosen && chosen.ranges.length > 0 ? (
          <div class="field">
            <label for="range">{label("range")}</label>
            <select id="range" value={meter.range} onChange={(e) => choose({ range: e.currentTarget.value })}>
              <option value="">Not said</option>
              {chosen.ranges.map((r, i) => <option key={r} value={r}>{unitWords(r)}, {chosen.range_accuracy[i]?.replaceAll("+-", "±")}</option>)}
            </select>
          </div>
        ) : null}
        {chosen && leads ? (
          <div class="field">
            <label for="leads">{leads.label}</label>
            <select id="leads" value={meter.leads} onChange={(e) => choose({ leads: e.currentTarget.value })}>
              {meter.leads === "" ? <option value="">{leads.choices?.[0]?.label ?? "Not said"}</option> : null}
              {(leads.choices ?? []).slice(meter.leads === "" ? 1 : 0).map((c) => <option key={c.value} value={c.value}>{c.label}</option>)}
            </select>
          </div>
        ) : null}
      </div>
    </details>
  );
}

/// Tenfold and thousandfold neighbours of the unit that the check is read in: what a display shows.
const neighbours: { [unit: string]: string[] } = { kohm: ["ohm", "kohm", "Mohm"], ohm: ["mohm", "ohm", "kohm", "Mohm"], mohm: ["mohm", "ohm"], Mohm: ["kohm", "Mohm"], V: ["mV", "V"], mV: ["mV", "V"] };

export function UnitChoice(props: { unit: string; value: string; set: (u: string) => void }): JSX.Element {
  const near = neighbours[props.unit] ?? [props.unit];
  // A meter may have sent another one.
  const units = near.includes(props.value) || props.value === "" ? near : [...near, props.value];
  if (units.length === 1) return <span class="unit-only">{unitWords(props.unit)}</span>;
  return (
    <select class="unit-choice" aria-label="Unit of the reading" value={props.value} onChange={(e) => props.set(e.currentTarget.value)}>
      {units.map((u) => <option key={u} value={u}>{unitWords(u)}</option>)}
    </select>
  );
}
