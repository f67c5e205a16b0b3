import "uplot/dist/uPlot.min.css";
import "./style/tokens.css";
import "./style/base.css";
import "./style/shell.css";
import "./style/form.css";
import "./style/drawing.css";
import "./style/answer.css";
import "./style/print.css";
import { render } from "preact";
import { startWatching } from "./api/changes";
import { startOutbox } from "./api/outbox";
import { startRouting } from "./route/route";
import { App } from "./app";

startRouting();
startWatching();
startOutbox();
const place = document.getElementById("app");
if (place) render(<App />, place);
