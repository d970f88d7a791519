using System.Collections.Immutable;
using PlankFit.Export.Summary;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Words;

public sealed class PlanSummaryTests
{
    private static readonly BottomPlan Plan = PrismaticPlan.Build();

    [Fact]
    public void OfAFlatBottom()
    {
        string[] lines = [.. PlanSummary.Of(Plan).AllLines(LengthUnit.Millimetre)];
        // 1064.1778 mm less 13.5 tan 20 by 6 m = 6.3556 m²; less 4.5 tan 20, 6.3752 m².
        Assert.StartsWith(
            "Layer 1, inner: 34 planks a side, 4 corner pieces in all; 6.36 m² a side; ",
            lines[0],
            StringComparison.Ordinal
        );
        Assert.Contains("6.38 m² a side", lines[1], StringComparison.Ordinal);
        Assert.Equal("Straight edges: close everywhere.", lines[2]);
        Assert.Equal("Hardest bend: none, every plank lies flat.", lines[3]);
        Assert.Equal(
            "Look first: S1-18: the master of layer 1: mark its two seams on the hull and tape them before the rest are cut",
            lines[^1]
        );
    }

    [Fact]
    public void StockIsTheSumOfWhatIsCutRoundedUp()
    {
        var summary = PlanSummary.Of(Plan);
        double sum = 0;
        foreach (PlankLayerPlan layer in Plan.PlankLayers)
        {
            foreach (Plank p in layer.Starboard.Concat(layer.Port))
            {
                sum += p.FlatCut.Max(v => v.X) - p.FlatCut.Min(v => v.X);
            }
        }

        Assert.Equal(sum, summary.StockMm, 1e-6);
        Assert.Equal("10.1 m", PlanWords.Stock(10_000.1, LengthUnit.Centimetre));
        Assert.Equal("10.0 m", PlanWords.Stock(10_000, LengthUnit.Millimetre));
        Assert.Equal("33'-0\"", PlanWords.Stock(9_760, LengthUnit.FeetInchesEighths));
        // 1 m² = 10.7639 sq ft.
        Assert.Equal("10.8 sq ft", PlanWords.Area(1e6, LengthUnit.Inch));
    }

    [Fact]
    public void TheWorstIsNamedAndTheGravestComesFirst()
    {
        BottomPlan plan = Changed(
            ("S1-05", p => p.Bent(new(900, 0.5, 4, 0.02, 300, "soak or steam to form"))),
            ("P1-06", p => p.Bent(new(1500, 0.3, 4, 0.02, 100, "cold, with care"))),
            ("P1-09", p => p.WithStraight(s => s with { Serve = false, WidestGapMm = 0.74 })),
            ("S1-11", p => p.WithStraight(s => s with { WidestOverlapMm = 0.31 })),
            ("S1-12", p => p.Fitted(new(true, false)))
        ) with
        {
            Findings =
            [
                new(Severity.Note, "hull", "a note"),
                new(Severity.Warning, "line chine", "one"),
                new(Severity.Error, "S1-02", "two"),
                new(Severity.Warning, "a", "three"),
                new(Severity.Warning, "b", "four") { Rank = Rank.DoNotSaw },
                new(Severity.Warning, "c", "five") { Rank = Rank.Know },
            ],
        };
        var summary = PlanSummary.Of(plan);
        Assert.Equal("P1-09", summary.WidestGap!.Id.ToString());
        Assert.Equal("S1-11", summary.WidestOverlap!.Id.ToString());
        Assert.Equal("S1-05", summary.WorstBend!.Id.ToString());
        Assert.Equal(
            ["S1-02: two", "b: four", "line chine: one", "2 more findings in the list."],
            summary.LookFirst
        );
        string[] lines = [.. summary.Lines(LengthUnit.Foot)];
        // 0.74 mm = 0.0291 in, the first mark; 0.3 mm is under half of it; 900 mm = 2.953 ft; 300 mm = 11 13/16 in (11.81).
        Assert.Contains(
            "Straight edges: widest opening 1/32\" at P1-09; widest overlap under 1/32\" at S1-11.",
            lines
        );
        Assert.Contains(
            "Hardest bend: S1-05, 2'-11\" radius, 11 13/16\" from its inboard end, soak or steam to form (an estimate, as every verdict is).",
            lines
        );
    }

    [Fact]
    public void FindingsAreListedGravestFirstAndCounted()
    {
        Finding[] findings =
        [
            new(Severity.Note, "hull", "a note"),
            new(Severity.Warning, "S1-02", "first warning"),
            new(Severity.Warning, "S1-03", "second warning"),
            new(Severity.Error, "", "an error without a place"),
        ];
        Assert.Equal(
            "error    an error without a place\nwarning  S1-02: first warning\nwarning  S1-03: second warning\nnote     hull: a note\n1 error, 2 warnings, 1 note\n",
            FindingsText.Listing(findings)
        );
        Assert.Equal("nothing found\n", FindingsText.Listing([]));
    }

    private static BottomPlan Changed(params (string Id, Func<Plank, Plank> Change)[] changes)
    {
        ImmutableArray<Plank> Apply(ImmutableArray<Plank> planks) =>
            [
                .. planks.Select(p =>
                    changes
                        .Where(c => c.Id == p.Id.ToString())
                        .Select(c => c.Change(p))
                        .FirstOrDefault()
                    ?? p
                ),
            ];
        return Plan with
        {
            Layers =
            [
                .. Plan.PlankLayers.Select(l =>
                    (LayerPlan)(l with { Starboard = Apply(l.Starboard), Port = Apply(l.Port) })
                ),
            ],
        };
    }
}
