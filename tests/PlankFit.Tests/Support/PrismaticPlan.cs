using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Support;

/// <summary>
/// The bottom of a prism: level keel, straight chine, the same deadrise everywhere, so that each side is a plane and every plank follows from
/// clipping a rectangle by parallel lines. Nothing of the program's own planking is used, so it serves to check it as well.
/// </summary>
/// <param name="KeelHalfBreadthMm">y of the keel line; the plane goes through y = 0, z = 0.</param>
/// <param name="MasterMm">x at which a master's own line crosses halfway between keel and chine; the default leaves no sliver at the corners.</param>
/// <param name="ClothMm">Thickness of a cloth between the two layers; 0 for none.</param>
/// <param name="MaxChordMm">Where given, edges are divided so that no chord is longer: same shape, more vertices.</param>
internal sealed record Prism(
    double LengthMm = 6000,
    double HalfBeamMm = 1000,
    double DeadriseDegrees = 20,
    double KeelHalfBreadthMm = 0,
    double WidthMm = 150,
    double ThicknessMm = 9,
    double AngleDegrees = 45,
    double MasterMm = 3100,
    double ClothMm = 0,
    double? MaxChordMm = null,
    double TickEveryMm = 200,
    LengthUnit Units = LengthUnit.Millimetre,
    EndRules? Ends = null
)
{
    public double Deadrise => DeadriseDegrees * Math.PI / 180;

    /// <summary>Distance from the middle line to the chine along the slant; 1064.1777724759 mm for the default (1000 / cos 20°).</summary>
    public double ChineMm => HalfBeamMm / Math.Cos(Deadrise);

    /// <summary>
    /// Where the plumb keel side cuts a surface parallel to the table's, at this offset along the outward normal: y stays, and the foot of the normal moves out.
    /// </summary>
    public double KeelMm(double offsetMm) =>
        (KeelHalfBreadthMm / Math.Cos(Deadrise)) - (offsetMm * Math.Tan(Deadrise));

    public Vec3 Outward => new(0, Math.Sin(Deadrise), -Math.Cos(Deadrise));

    /// <summary>The point at x, at a distance along the slant from the middle line, on the parallel surface.</summary>
    public Vec3 Point(double x, double slantMm, double offsetMm) =>
        new Vec3(x, slantMm * Math.Cos(Deadrise), slantMm * Math.Sin(Deadrise))
        + (offsetMm * Outward);
}

/// <summary>A plane parallel to one side of the prism; u is x and v the distance along the slant, both mm.</summary>
internal sealed class PrismSide(Prism prism, double offsetMm) : ISurface
{
    public SurfacePoint At(double u, double v) =>
        new(
            prism.Point(u, v, offsetMm),
            Vec3.UnitX,
            new Vec3(0, Math.Cos(prism.Deadrise), Math.Sin(prism.Deadrise)),
            prism.Outward,
            0,
            0,
            0
        );
}

/// <summary>A whole <see cref="BottomPlan"/> of a prism in closed form: two layers, the inner heading aft, the outer forward, the table to the outside.</summary>
internal static class PrismaticPlan
{
    public static BottomPlan Build(Prism? of = null)
    {
        Prism prism = of ?? new Prism();
        PlankLayerSpec inner = Spec("inner", Heads.Aft),
            outer = Spec("outer", Heads.Forward);
        double t = prism.ThicknessMm;
        PlankLayerPlan first = Layer(prism, 1, inner, -(t + prism.ClothMm + (t / 2))),
            second = Layer(prism, 2, outer, -t / 2);
        ClothLayerSpec cloth = new("core cloth", prism.ClothMm);
        bool clothed = prism.ClothMm > 0;
        ImmutableArray<LayerSpec> specs = clothed ? [inner, cloth, outer] : [inner, outer];
        Job job = new(
            new PlankingJob(
                prism.Units,
                Offsets(prism),
                new("keel edge", "chine", [], OffsetsAreTo.Outside, KeelSide.Plumb),
                specs,
                prism.Ends ?? EndRules.Default,
                BendLimits.Default
            )
        )
        {
            Name = "prism",
            Revision = "7f3a9c",
        };
        ImmutableArray<StationOnHull> stations =
        [
            .. job.Offsets.Stations.Select(s => new StationOnHull(
                s.Name,
                s.PositionMm,
                s.PositionMm
            )),
        ];
        return new(
            job,
            new(
                job.Planking,
                new(null!, stations),
                clothed ? [first, new ClothLayerPlan(cloth), second] : [first, second],
                []
            )
        );

        PlankLayerSpec Spec(string name, Heads heads) =>
            PlankLayer.Of(
                name,
                prism.ThicknessMm,
                prism.WidthMm,
                heads,
                prism.AngleDegrees,
                prism.MasterMm,
                Hold.Width,
                7.5,
                0.5,
                null
            );
    }

    private static OffsetTable Offsets(Prism prism)
    {
        ImmutableArray<Station> stations =
        [
            .. Enumerable.Range(0, 7).Select(i => new Station($"{i}", i * prism.LengthMm / 6)),
        ];
        return new(
            stations,
            [Line("keel edge", prism.KeelHalfBreadthMm), Line("chine", prism.HalfBeamMm)]
        );

        OffsetLine Line(string name, double y) =>
            new(
                name,
                [.. stations.Select(_ => (double?)null)],
                [.. stations.Select(_ => (double?)(y * Math.Tan(prism.Deadrise)))],
                [.. stations.Select(_ => (double?)y)]
            );
    }

    private static PlankLayerPlan Layer(
        Prism prism,
        int number,
        PlankLayerSpec spec,
        double offsetMm
    )
    {
        PrismPlanks planks = new(prism, number, spec, offsetMm);
        ImmutableArray<Plank> starboard = planks.All();
        double keel = prism.KeelMm(offsetMm),
            chine = prism.ChineMm,
            end = prism.LengthMm;
        return new(
            number,
            spec,
            new(offsetMm, new PrismSide(prism, offsetMm)),
            end * (chine - keel),
            new(starboard.Single(p => p.Kind == PlankKind.Master).Number, 0, prism.MasterMm),
            [
                prism.Point(0, keel, offsetMm),
                prism.Point(0, chine, offsetMm),
                prism.Point(end, chine, offsetMm),
                prism.Point(end, keel, offsetMm),
            ],
            starboard,
            [.. starboard.Select(PrismMirror.ToPort)]
        )
        {
            Panel = Panel.Bottom("keel", "chine", []),
        };
    }
}
