package neckway.report;

/** How a report looks: dark on light, on a phone and on paper. */
final class ReportStyle {
  static final String CSS =
      """

      :root { color-scheme: light; }
      * { box-sizing: border-box; }
      body { margin: 0; background: #fff; color: #1b1b1b;
        font: 1rem/1.5 "DejaVu Sans", Verdana, sans-serif; overflow-wrap: break-word; }
      main { max-width: 60rem; margin: 0 auto; padding: 1rem; }
      h1 { font-size: 1.4rem; line-height: 1.25; margin: 0 0 .3rem; }
      h2 { font-size: 1.1rem; margin: 1.4rem 0 .4rem; }
      p { margin: .3rem 0; } ul, ol { margin: .3rem 0; padding-left: 1.4rem; }
      li { margin: .25rem 0; }
      .next { border: 2px solid #1b1b1b; border-radius: .5rem; padding: .2rem 1rem .6rem;
        margin-top: 1rem; font-size: 1.1rem; }
      .next h2 { margin-top: .5rem; }
      .small, footer { font-size: .85rem; color: #4a4a4a; }
      footer { margin-top: 2rem; border-top: 1px solid #999; padding-top: .5rem; }
      .tab { display: flex; flex-wrap: wrap; gap: .2rem .4rem; }
      svg { max-width: 100%; height: auto; display: block; }
      .wide { overflow-x: auto; } svg.long { min-width: 34rem; }
      text { font: 12px "DejaVu Sans", Verdana, sans-serif; text-anchor: middle; fill: #1b1b1b; }
      text.label { font-size: 11px; } text.strong { font-weight: bold; }
      text.sign { font-size: 13px; } text.bad { font-weight: bold; fill: #8c1d13; }
      .string { stroke: #aaa; stroke-width: 1; } .fret { stroke: #bbb; stroke-width: 1; }
      .nut { stroke: #1b1b1b; stroke-width: 4; } .bar { stroke: #555; stroke-width: 1.2; }
      .plain { fill: #fff; } .right { fill: #fff; stroke: #1b1b1b; stroke-width: 1.2; }
      .wrong { fill: #fff; stroke: #8c1d13; stroke-width: 2.2; }
      .leftout { fill: #fff; stroke: #1b1b1b; stroke-width: 1.4; stroke-dasharray: 3 2; }
      .twice { fill: #fff; stroke: #1b1b1b; stroke-width: 1.4; }
      .band { fill: #e6e6e6; } .point { fill: #1b1b1b; }
      .ring { fill: #fff; stroke: #1b1b1b; stroke-width: 1.4; }
      table { border-collapse: collapse; width: 100%; }
      th, td { text-align: left; vertical-align: top; padding: .25rem .5rem .25rem 0;
        border-bottom: 1px solid #ccc; }
      .time { font-weight: bold; } .doubt { border: 1px solid #1b1b1b; padding: 0 .3rem; }
      .sound { display: flex; flex-wrap: wrap; gap: .3rem 1rem; }
      .sound label { display: flex; align-items: center; gap: .4rem; flex: 1 1 18rem;
        font-size: .85rem; }
      .sound span { width: 5.5rem; flex: none; } audio { flex: 1 1 8rem; width: 8rem; min-width: 0;
        height: 2.5rem; }
      @page { margin: 12mm; }
      @media print {
        main { padding: 0; max-width: none; } html { font-size: 9pt; }
        body { line-height: 1.35; }
        .sound { display: none; } section, li { break-inside: avoid; }
        .listen { break-inside: auto; } .moments p { margin: 0; } .moments li { margin: .1rem 0; }
        footer { margin-top: .5rem; } h2 { margin-top: .8rem; }
        .wide { overflow: visible; } svg.long { min-width: 0; } .tab svg { zoom: .85; }
      }
      """;

  private ReportStyle() {}
}
