using MathNet.Numerics.LinearAlgebra;
using PlankFit.Export.Taping;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Trust;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Taping;

/// <summary>From a plank that does not fit back to why.</summary>
public sealed class FitJudgeTests(ITestOutputHelper output)
{
    /// <summary>Every cell 1.5 mm by itself, one standard deviation, and nothing else.</summary>
    private static readonly TrustSpec Each = TrustSpec.Default with
    {
        ReadToMm = 0,
        FramesMadeWithinMm = 1.5 * 1.96,
        KeelMadeWithinMm = 1.5 * 1.96,
        Standing = new(0, 0, 1.5 * 1.96, 0),
        Bends = new(0, 2, 0, 0.2),
        TapeWithinMm = 0.7 * 1.96,
    };

    private static readonly Lazy<(Planked Planked, PlankSlopes Slopes)> Prism = new(() =>
        Laid(new(PrismTable.Job))
    );
    private static readonly Lazy<(Planked Planked, PlankSlopes Slopes)> Launch = new(() =>
        Laid(TapedHulls.Launch)
    );

    private static (Planked, PlankSlopes) Laid(Job job)
    {
        Planked planked = BottomPlanner.Plan(job).Plan!.Planked;
        return (planked, PlankSloper.Of(planked, Each, Sensitivities.Of(planked)));
    }

    private static FitVerdict Judge(
        (Planked Planked, PlankSlopes Slopes) laid,
        string plank,
        double shortMm,
        double opensForward,
        TrustSpec? trust = null
    )
    {
        PlankId id = Named.Plank(plank);
        TapeReading Of(TapeKind kind, double mm) => new(new(kind, id.Side, [], new(id, false)), mm);
        Planked offered = laid.Planked with
        {
            Job = laid.Planked.Job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Readings =
                    [
                        Of(TapeKind.ShortAtChine, shortMm),
                        Of(TapeKind.OpensAtKeel, opensForward),
                    ],
                },
            },
        };
        return Assert.Single(
            FitJudge.Of(
                offered,
                trust ?? Each,
                laid.Slopes,
                TwoSides.Of(trust ?? Each, TableCells.Of(laid.Planked.Job))
            )
        );
    }

    /// <summary>
    /// The sense of the gap, on a plane bottom by plane geometry. The plank lies where it was drawn, its middle line through the same place; the keel's edge then runs
    /// inward going forward by a thousandth, in the plane. By intersections of lines the forward corner stands off by its own distance, the after one by its; what opens
    /// and what is lacking are these, and those that the slopes have.
    /// </summary>
    [Fact]
    public void TheGapOpensWhereThePlaneSaysSo()
    {
        // The master, whose marks stay where the edge does not move: a plank elsewhere would be turned by those beside it.
        Plank drawn = Prism
            .Value.Planked.PlankLayers.Single()
            .Starboard.Single(p => p.Kind == PlankKind.Master);
        SlopedPlank plank = Prism.Value.Slopes.Planks.Single(p => p.Id == drawn.Id);
        PlankEnd keel = drawn.Ends.Single(e => e.At == PlankFit.Planking.Hulls.PanelEdge.Lower);
        Vec3 a = keel.Outline[0],
            b = keel.Outline[^1],
            forward = a.X < b.X ? a : b,
            after = a.X < b.X ? b : a;
        var cells = TableCells.Of(PrismTable.Job);
        // The keel's edge moves inboard along the bottom's slope, a thousandth of the way from the middle station.
        const double slope = 1e-3;
        (double cb, double sb) = (
            960 / Math.Sqrt((960 * 960) + (320 * 320)),
            320 / Math.Sqrt((960 * 960) + (320 * 320))
        );
        Vector<double> p = Vector<double>.Build.Dense(cells.Count);
        double middle = (forward.X + after.X) / 2;
        for (int i = 0; i < 11; i++)
        {
            double inward = (middle - (1000 * i)) * slope;
            p[cells.IndexOf("keel", i, CellKind.HalfBreadth)!.Value] = -inward * cb;
            p[cells.IndexOf("keel", i, CellKind.Height)!.Value] = -inward * sb;
        }

        // Square to the keel, in the plane: the forward corner stands off by its distance times the slope.
        double opens = (after.X - forward.X) * slope;
        Assert.True(opens > 0);
        double told = plank.Fit!.OpensForwardADegree * (plank.Fit.InboardSlopes * p);
        output.WriteLine($"{opens:0.0000} {told:0.0000}");
        Assert.Equal(opens, told, 0.01 * opens);
    }

    /// <summary>A plank turned about its middle between two parallel lines, by plane geometry: its length asked for, and the corner that opens.</summary>
    [Fact]
    public void APlankLaidTurnedIsShortAsThePlaneSaysSo()
    {
        SlopedPlank plank = Prism.Value.Slopes.Planks.First(p =>
            p.Id.Number == 20 && p.Fit is not null
        );
        double g = 1011.928851,
            at45 = g / Math.Sin(Math.PI / 4),
            less = g / Math.Sin((Math.PI / 4) - 0.001);
        // 24.977 a degree at 45, by the closed form of the girth's length.
        Assert.Equal(
            (less - at45) / (0.001 * 180 / Math.PI),
            Math.Abs(plank.Fit!.ShortADegree),
            0.05
        );
        // Turned so that it lacks length it lies nearer to the keel's own run, and the sharp corner comes nearer: it is the other that opens.
        Assert.Equal(
            150 / Math.Sin(Math.PI / 4) * Math.PI / 180,
            Math.Abs(plank.Fit.OpensForwardADegree),
            0.01
        );
        double turn = 0.1 * Math.Sign(plank.Fit.ShortADegree),
            opens = -plank.Fit.OpensForwardADegree * turn;
        Vec2 along = Vec2At(45),
            turned = Vec2At(45 - 0.1);
        // Heads aft: keel along +x, the plank goes aft and outboard; both corners of its end stay square off its line as sawn, at 45 to it.
        Vec2 Corner(Vec2 dir, double side) =>
            (side * 75 * new Vec2(-dir.Y, dir.X)) - (side * 75 * dir);
        double Off(double side) => (Corner(turned, side).Y * 1) - (Corner(along, side).Y * 1);
        // Forward is the corner on the left of the way outboard, with x aft and y outboard seen from within; it stands off where its y grows more.
        double byPlane = Off(1) - Off(-1);
        output.WriteLine($"{opens:0.000} {byPlane:0.000}");
        Assert.Equal(byPlane, opens, 0.02);

        static Vec2 Vec2At(double degrees) =>
            new(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));
    }

    /// <summary>On the launch: 3 mm short and 1 mm open at the keel's forward corner.</summary>
    [Fact]
    public void ThreeShortAndOneOpenHasItsLikeliestCauses()
    {
        FitVerdict verdict = Judge(Launch.Value, "S1-20", 3, 1);
        foreach (LikelyCause c in verdict.Likeliest)
        {
            output.WriteLine(
                $"{c.Kind} {c.Station} {c.Cell} {c.Odds:0.00} size {c.SizeMm:0.0} explains {c.ShortMm:0.0} {c.OpensForwardMm:0.0}"
            );
        }

        string words = FitWords.Of(verdict, LengthUnit.Millimetre);
        output.WriteLine(words);
        Assert.StartsWith(
            "S1-20 (3 mm short at the chine, opens 1 mm at the keel's forward corner): likeliest, if [trust] is right: it lies turned",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Or the keel at station 6 is 4 mm narrower",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains("What parts the first two", words, StringComparison.Ordinal);
        Assert.Equal(FitCauseKind.LaidTurned, verdict.Likeliest[0].Kind);
        Assert.InRange(verdict.Likeliest[0].Odds, 0.6, 0.97);
        Assert.True(verdict.IsClear);
        Assert.Contains(
            verdict.Likeliest,
            c => c is { Kind: FitCauseKind.KeelAt, Station: "6", SizeMm: < -3 }
        );
        Assert.InRange(verdict.Likeliest.Length, 1, 3);
        Assert.True(verdict.Likeliest.Sum(c => c.Odds) <= 1 + 1e-9);
    }

    /// <summary>A length alone, by no more than saw and tape are out: many causes will do, and that is said.</summary>
    [Fact]
    public void WhatManyCausesExplainIsNotClearFromOnePlank()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        FitVerdict[] all =
        [
            .. from lacks in new[] { -3.0, -1.5, 0, 1.5, 3 }
            from opens in new[] { -1.5, -0.8, 0, 0.8, 1.5 }
            select Judge(Launch.Value, "P1-20", lacks, opens, TrustSpec.Default),
        ];
        Assert.Contains(all, v => !v.IsClear && !v.IsNoMoreThanTools);
        Assert.Contains(all, v => v.IsClear && !v.IsNoMoreThanTools);
        Assert.Contains(all, v => v.IsNoMoreThanTools);
        foreach (FitVerdict v in all)
        {
            string words = FitWords.Of(v, LengthUnit.Millimetre);
            Assert.Equal(
                !v.IsClear && !v.IsNoMoreThanTools,
                words.Contains("not clear from one plank", StringComparison.Ordinal)
            );
            Assert.Contains("if [trust] is right", words, StringComparison.Ordinal);
            Assert.DoesNotContain("certain", words, StringComparison.Ordinal);
        }
    }

    /// <summary>A plank that a wide keel makes short, all else true: the keel is among the causes named, and its size about that.</summary>
    [Fact]
    public void AKeelThatIsWideIsNamed()
    {
        SlopedPlank plank = Launch.Value.Slopes.Planks.Single(p => p.Id == Named.Plank("S1-20"));
        var cells = TableCells.Of(TapedHulls.Launch.Planking);
        int at = cells.IndexOf("keel edge", 6, CellKind.HalfBreadth)!.Value;
        double lacks = -5 * plank.Length[at],
            opens = -5 * plank.Fit!.OpensForwardADegree * plank.Fit.InboardSlopes[at];
        FitVerdict verdict = Judge(
            Launch.Value,
            "S1-20",
            lacks
                - (
                    Math.Abs(opens)
                    / 2
                    / Math.Abs(Math.Sin(plank.Fit.InboardDegrees * Math.PI / 180))
                ),
            opens
        );
        Assert.Equal(
            (FitCauseKind.KeelAt, "6"),
            (verdict.Likeliest[0].Kind, verdict.Likeliest[0].Station)
        );
        Assert.InRange(verdict.Likeliest[0].SizeMm, -5.5, -3.5);
    }
}
