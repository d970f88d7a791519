using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Topsides;

/// <summary>A hull of which only the topside is looked at: three lines given point by point, a plain bottom under it.</summary>
internal static class TopsideJob
{
    public const double WidthMm = 120;

    /// <summary>Points of chine and sheer, station by station, and the angle at which planks leave the chine.</summary>
    /// <param name="layers">Thicknesses, from the inside out.</param>
    public static Job Of(
        IReadOnlyList<(double X, double Y, double Z)> chine,
        IReadOnlyList<(double X, double Y, double Z)> sheer,
        double angle,
        double[] layers,
        OffsetsAreTo to = OffsetsAreTo.Outside,
        EndRules? ends = null
    )
    {
        ImmutableArray<(double X, double Y, double Z)> keel =
        [
            .. chine.Select(p => (p.X, 20.0, p.Z - (0.3 * (p.Y - 20)))),
        ];
        OffsetTable table = new(
            [.. chine.Select((p, i) => new Station($"{i}", p.X))],
            [Line("keel", keel), Line("chine", chine), Line("sheer", sheer)]
        );
        var bottom = Panel.Bottom("keel", "chine", []);
        var planking = new PlankingJob(
            LengthUnit.Millimetre,
            table,
            new(bottom, to, KeelSide.Plumb),
            [Layer("bottom", 9, 45, Heads.Aft)],
            EndRules.Default,
            BendLimits.Default
        );
        return new(planking)
        {
            Name = "topside",
            Revision = "000000",
            Panels =
            [
                planking with
                {
                    Hull = planking.Hull with
                    {
                        Panel = new("topside", "T", "chine", "sheer", []) { Beside = bottom },
                    },
                    Layers =
                    [
                        .. layers.Select(
                            (t, i) =>
                                Layer($"side {i}", t, angle, i % 2 == 0 ? Heads.Aft : Heads.Forward)
                        ),
                    ],
                    Ends = ends ?? EndRules.LeftLong,
                },
            ],
        };
    }

    public static BottomPlan Topside(Job job) =>
        Assert.Single(WholeBottomTests.Planned(job).Others);

    private static LayerSpec Layer(string name, double thickness, double angle, Heads heads) =>
        PlankLayer.Of(name, thickness, WidthMm, heads, angle, null, Hold.Width, 7.5, 0.5, null);

    private static OffsetLine Line(
        string name,
        IReadOnlyList<(double X, double Y, double Z)> points
    ) =>
        new(
            name,
            [.. points.Select(p => (double?)p.X)],
            [.. points.Select(p => (double?)p.Z)],
            [.. points.Select(p => (double?)p.Y)]
        );
}
