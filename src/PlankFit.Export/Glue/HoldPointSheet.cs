using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Glue;

namespace PlankFit.Export.Glue;

/// <summary>What no session may pass before it is ticked.</summary>
internal static class HoldPointSheet
{
    private const string Box = "[   ]";

    public static ListSheet Of(GluePlan glue) =>
        new(
            GlueSheets.Block("Gluing: hold points", "no session goes on before they are ticked"),
            [
                "In this order. What has a time is not before it by the planned temperature: try it as the product's data sheet says, and wait where it is not so. What has a latest time and has missed it goes the long way: cured, washed, keyed, dry.",
            ],
            [
                new("done", 9, false),
                new("layer", 24, false),
                new("when", 18, false),
                new("what must be so", 90, false),
                new("not before", 20, false),
                new("not after", 20, false),
                new("by whom, when", 26, false),
            ],
            [
                .. glue.Stages.SelectMany(s =>
                    s.Before.Select(h => Row(s, "before glue", h))
                        .Concat(s.After.Select(h => Row(s, "after", h)))
                ),
            ],
            Bold: false
        );

    private static ImmutableArray<string> Row(GlueStage stage, string when, HoldPoint point) =>
        [
            Box,
            stage.Layer,
            when,
            point.What,
            point.NotBefore is { } from ? GlueWords.When(Math.Ceiling(from)) : "",
            point.NotAfter is { } to ? GlueWords.When(to) : "",
            "",
        ];
}
