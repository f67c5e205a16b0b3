/// Pictures that an answer brings along under agreed keys: `band` (a reading between its limits)
/// and `plot` (a trend). They stand above the figures; the figures say the same in words.

import type { JSX } from "preact";
import type { JsonObject } from "../api/types";
import { AcceptanceBand, type BandProps } from "./band";
import { Plot } from "./chart";
import type { PlotData } from "./chart_draw";
import { unitWords } from "./digits";

interface BandAnswer {
  lower?: number;
  upper?: number;
  value?: number;
  U?: number;
  others?: number[];
  lower_text?: string;
  upper_text?: string;
  value_text?: string;
  words: string;
}

/// The answer without its pictures, and the pictures.
export function apart(answer: JsonObject): { rest: JsonObject; pictures: JSX.Element } {
  const { band, plot, ...rest } = answer;
  return {
    rest,
    pictures: (
      <>
        {band ? <AcceptanceBand {...bandProps(band as unknown as BandAnswer)} /> : null}
        {plot ? <Plot data={plot as unknown as PlotData} words={String((plot as JsonObject)["words"] ?? "")} /> : null}
      </>
    ),
  };
}

function bandProps(band: BandAnswer): BandProps {
  const { lower, upper, value, U, others, words } = band;
  const props: BandProps = { lower, upper, value, U, others, words };
  if (band.lower_text) props.lowerText = unitWords(band.lower_text);
  if (band.upper_text) props.upperText = unitWords(band.upper_text);
  if (band.value_text) props.valueText = unitWords(band.value_text.replaceAll("+-", "±"));
  return props;
}
