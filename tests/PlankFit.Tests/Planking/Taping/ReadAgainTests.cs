using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Export.Tables;
using PlankFit.Export.Taping;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Taping;

/// <summary>What is told of readings that are put aside, read once, or of a plank that is none.</summary>
public sealed class ReadAgainTests
{
    private static readonly TapedHulls Hulls = new(TapedHulls.Launch, TrustSpec.Default, 11);

    private static readonly TapePlace Girth = TapedHulls.Girth("7"),
        Other = TapedHulls.Girth("4"),
        Across = TapedHulls.Two(TapeKind.Diagonal, ("keel edge", "6"), ("chine", "7"));

    private static readonly double[] Drawn = Hulls.Expected(
        [Girth, Other, Across],
        Vector<double>.Build.Dense(2 * Hulls.Cells.Count)
    );

    /// <summary>Girth 7 was read as drawn and 40 mm too long, and girth 4 once only.</summary>
    private static readonly Lazy<BottomPlan> Slipped = new(() =>
        Plan([
            new(Girth, Drawn[0]),
            new(Girth, Drawn[0] + 0.4),
            new(Girth, Drawn[0] + 40),
            new(Other, Drawn[1]),
            new(Across, Drawn[2]),
            new(Across, Drawn[2] + 0.3),
        ])
    );

    [Fact]
    public void WhatWasPutAsideComesFirstAndThenWhatWasReadOnce()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        TapeAdvice advice = Advice(Slipped.Value);
        Assert.Equal([Girth, Other], advice.Again.Select(a => a.Place));
        Assert.Equal([true, false], advice.Again.Select(a => a.IsSlip));
        // What all else has of it.
        Assert.Equal(Drawn[0], advice.Again[0].ExpectedMm, 1.0);
        Assert.InRange(advice.Again[0].LimitMm, 1.0, 5.0);
        Assert.DoesNotContain(advice.Wishes, w => w.Place == Girth || w.Place == Other);
    }

    [Fact]
    public void BlanksAndListAndDrawingHaveThem()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        TapeAdvice advice = Advice(Slipped.Value);
        using var csv = new MemoryStream();
        Csv.Write(TapingTables.Blanks(advice), csv);
        string[] rows = System
            .Text.Encoding.UTF8.GetString(csv.ToArray())
            .Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains("girth,7,starboard", rows[1], StringComparison.Ordinal);
        Assert.Contains("girth,4,starboard", rows[2], StringComparison.Ordinal);
        // Once what was read already, twice what is new.
        Assert.Equal(1 + 2 + (2 * advice.Wishes.Length), rows.Length);
        Assert.Contains(
            Slipped.Value.Findings,
            f =>
                f.Message.StartsWith(
                    "counted for less instead of put aside, it would move no number of the table by more than ",
                    StringComparison.Ordinal
                )
        );
        ImmutableArray<Drawing> sheets = TapingPages.Of(Slipped.Value, advice);
        string[] list = Texts(sheets[0]),
            drawn = Texts(sheets[1]);
        Assert.Contains("it was put aside: read it again", list);
        Assert.Contains("it was read once: read it again", list);
        Assert.Contains("A", drawn);
        Assert.Contains("B", drawn);
        Assert.All(sheets.SelectMany(s => SheetCheck.Faults(s)), f => Assert.Fail(f));
    }

    /// <summary>Read twice with the same slip in it: nobody is told that the two contradict each other.</summary>
    [Fact]
    public void TwoReadingsThatAgreeAreNotToldToContradict()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        TapePlace[] more =
        [
            .. new[] { "4", "5", "6", "7", "8", "9" }.Select(s => TapedHulls.Girth(s)),
            .. new[] { "6", "7", "8" }.SelectMany(s =>
                new[]
                {
                    TapedHulls.Point(TapeKind.HalfBreadth, "chine", s, Side.Starboard),
                    TapedHulls.Point(TapeKind.Height, "chine", s, Side.Starboard),
                    TapedHulls.Point(TapeKind.HalfBreadth, "keel edge", s, Side.Starboard),
                }
            ),
        ];
        double[] drawn = Hulls.Expected(more, Vector<double>.Build.Dense(2 * Hulls.Cells.Count));
        BottomPlan plan = Plan([
            .. more.SelectMany(
                (p, i) => Enumerable.Repeat(new TapeReading(p, drawn[i] + (p == Girth ? 60 : 0)), 2)
            ),
        ]);
        Assert.Equal([Girth, Girth], plan.Taped!.Slips.Select(s => s.Reading.Place));
        Assert.DoesNotContain(
            plan.Findings,
            f => f.Message.Contains("nothing else says which", StringComparison.Ordinal)
        );
        Assert.Contains(
            plan.Findings,
            f => f.Message.Contains("measure it again", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void APlankThatIsNoneIsSaid()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        PlankId none = Slipped.Value.PlankLayers.First().Starboard[0].Id with { Number = 99 };
        BottomPlan plan = Plan([
            new(new(TapeKind.ShortAtChine, Side.Starboard, [], new TapedEdge(none, true)), 3),
        ]);
        Finding told = Assert.Single(
            plan.Findings,
            f => f.Where.Contains("S1-99", StringComparison.Ordinal)
        );
        Assert.Equal(Severity.Warning, told.Severity);
        Assert.Contains("has no such plank, only 01 to ", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(
            plan.Findings,
            f => f.Message.Contains("offered up", StringComparison.Ordinal)
        );
    }

    private static string[] Texts(Drawing sheet) =>
        [.. sheet.Shapes.OfType<Lettering>().Select(l => l.Text)];

    private static TapeAdvice Advice(BottomPlan plan) =>
        TapeAdvisor.Of(
            plan.Planked,
            TrustSpec.Default,
            PlankSloper.Of(plan.Planked, TrustSpec.Default, plan.Trust!.Sureness.Slopes),
            plan.Taped,
            6
        );

    private static BottomPlan Plan(ImmutableArray<TapeReading> read) =>
        BottomPlanner
            .Plan(
                TapedHulls.Launch with
                {
                    Trust = TrustSpec.Default,
                    Joints = null,
                    Fastenings = null,
                    SettingUp = null,
                    Framing = [],
                    AsBuilt = AsBuiltSpec.None with { Readings = read },
                },
                null,
                TestContext.Current.CancellationToken
            )
            .Plan!;
}
