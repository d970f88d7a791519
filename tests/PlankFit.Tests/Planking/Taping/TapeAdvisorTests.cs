using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Planking.Taping.TapedHulls;

namespace PlankFit.Tests.Planking.Taping;

/// <summary>What readings do to planks, on the launch.</summary>
public sealed class TapeAdvisorTests(ITestOutputHelper output)
{
    private static readonly Lazy<(Planked Planked, PlankSlopes Slopes)> Laid = new(() =>
    {
        Planked planked = BottomPlanner
            .Plan(
                Launch with
                {
                    Planking = Launch.Planking with
                    {
                        Ends = new(EndRule.Fit, EndRule.Fit, EndRule.Fit, EndRule.Fit, []),
                    },
                }
            )
            .Plan!.Planked;
        return (planked, PlankSloper.Of(planked, TrustSpec.Default, Sensitivities.Of(planked)));
    });

    private static SlopedPlank[] Inner =>
        [.. Laid.Value.Slopes.Planks.Where(p => p.Id.Layer == 1 && p.Id.Number is >= 3 and <= 35)];

    /// <summary>A chine that swells smoothly by 4 mm, seen by four girths: with the swelling expected, planks' lengths come out within 0.3 mm; with every cell for itself they do not.</summary>
    [Fact]
    public void ASmoothSwellingIsRecoveredFromFourGirths()
    {
        double trend = Lengths(
                TrustSpec.Default with
                {
                    ReadToMm = 0,
                    FramesMadeWithinMm = 0,
                    KeelMadeWithinMm = 0,
                    Standing = new(0, 0, 0, 0),
                    Bends = new(8, 0, 0, 0.2),
                    TapeWithinMm = 0.2,
                }
            ),
            apart = Lengths(
                TrustSpec.Default with
                {
                    ReadToMm = 0,
                    FramesMadeWithinMm = 8,
                    KeelMadeWithinMm = 0,
                    Standing = new(0, 0, 0, 0),
                    Bends = new(0, 0, 0, 0.2),
                    TapeWithinMm = 0.2,
                }
            );
        output.WriteLine($"trend {trend:0.00}, apart {apart:0.00}");
        Assert.InRange(trend, 0, 0.3);
        Assert.InRange(apart, 0.6, 3);

        double Lengths(TrustSpec trust)
        {
            var hulls = new TapedHulls(Launch, trust, 1);
            int n = hulls.Cells.Count;
            Vector<double> truth = Vector<double>.Build.Dense(
                2 * n,
                i =>
                    i < n && hulls.Cells.Cells[i] is { Kind: CellKind.HalfBreadth, OfKeel: false } c
                        ? 4 * Math.Exp(-Math.Pow((hulls.Cells.PositionOf(c) - 4000) / 2000, 2) / 2)
                        : 0
            );
            TapePlace[] girths = [.. new[] { "3", "5", "7", "9" }.Select(s => Girth(s))];
            Vector<double> miss =
                hulls
                    .Adjusted([
                        .. girths.Zip(
                            hulls.Expected(girths, truth),
                            (p, mm) => new TapeReading(p, mm)
                        ),
                    ])
                    .After.Values - truth;
            return Math.Sqrt(Inner.Average(p => Math.Pow(p.Length * miss.SubVector(0, n), 2)));
        }
    }

    /// <summary>A tape between marks that stay where they are: by the slopes of the planner, and by moving the loft.</summary>
    [Fact]
    public void SeamsBetweenMarksHaveTheSlopesOfTheLoft()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        var hulls = new TapedHulls(Launch, TrustSpec.Default, 1);
        SlopedPlank[] some = [.. Inner.Where(p => p.Id.Number is 10 or 25)];
        ImmutableDictionary<TapedEdge, TapedSeamPlace> seams = some.ToImmutableDictionary(
            p => new TapedEdge(p.Id, true),
            p => new TapedSeamPlace(
                p.AfterSeam!.Marks,
                Laid.Value.Planked.PlankLayers.First().NeutralOffsetMm - 4.5,
                p.AfterSeam.LengthMm,
                0
            )
        );
        Matrix<double> h = new Expectations(
            Launch.Planking,
            hulls.Cells,
            [
                .. seams
                    .Keys.Order(Comparer<TapedEdge>.Create((a, b) => a.Plank.CompareTo(b.Plank)))
                    .Select(e => new TapePlace(TapeKind.SeamLength, Side.Starboard, [], e)),
            ],
            seams
        ).Slopes(Vector<double>.Build.Dense(2 * hulls.Cells.Count));
        for (int i = 0; i < some.Length; i++)
        {
            Vector<double> off = h.Row(i).SubVector(0, hulls.Cells.Count) - some[i].AfterSeam!.Held;
            output.WriteLine($"{some[i].Id} {off.AbsoluteMaximum():0.0000}");
            Assert.InRange(off.AbsoluteMaximum(), 0, 0.02);
        }
    }

    /// <summary>The few readings wished for make the planks surer than as many girths do, and each wish brings something.</summary>
    [Fact]
    public void WhatIsWishedForBringsMoreThanGirths()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        (Planked planked, PlankSlopes slopes) = Laid.Value;
        TapeAdvice advice = TapeAdvisor.Of(planked, TrustSpec.Default, slopes, null, 16);
        foreach (TapeWish w in advice.Wishes.Concat(advice.Edges))
        {
            output.WriteLine(
                $"{w.Place.What} {w.Place.Where} {w.Place.Side} {w.ExpectedMm:0.0} within {w.LimitMm:0.0}: {w.Brings}"
            );
        }

        double[] now =

            [
                .. advice
                    .Planks.Where(p =>
                        p.Id is { Layer: 1, Side: Side.Starboard, Number: >= 3 and <= 35 }
                    )
                    .Select(p => p.WithinMm)
                    .Order(),
            ],
            then =

            [
                .. advice
                    .Planks.Where(p =>
                        p.Id is { Layer: 1, Side: Side.Starboard, Number: >= 3 and <= 35 }
                    )
                    .Select(p => p.WishedMm)
                    .Order(),
            ];
        output.WriteLine(
            $"now {now[0]:0.0} {now[16]:0.0} {now[^1]:0.0}; then {then[0]:0.0} {then[16]:0.0} {then[^1]:0.0}; {advice.Planks.Length} planks, {advice.Others.Length} others"
        );
        Assert.InRange(now[16], 4.5, 6.5);
        Assert.InRange(now[^1], 7, 9);
        Assert.InRange(then[16], 1, 4);
        Assert.True(then[^1] < now[^1]);
        Assert.True(advice.Wishes.Length > 5);
    }
}
