using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>Jobs with cloth on them.</summary>
internal static class SheathedJobs
{
    public static readonly ClothSpec Stitched = new(
        "stitched 600",
        ClothKind.Stitched,
        600,
        [45, -45],
        [new(1270, 50_000)]
    )
    {
        GlassContent = new(0.4, 0.5, 0.55),
        MatGlassContent = new(0.25, 0.3, 0.35),
        LocksAtDegrees = 40,
    };

    public static readonly ClothSpec Woven = Stitched with
    {
        Name = "woven 200",
        Kind = ClothKind.Woven,
        MassGsm = 200,
        DirectionsDegrees = [0, 90],
        Rolls = [new(1000, 25_000)],
    };

    public static SheathingSpec Usual(string layer) =>
        new(layer, Stitched.Name) { Keel = new ClothAtKeel.PastCentreLine(50) };

    /// <summary>The launch's bare skin under a stiff cloth that is pressed along the keel, which shears it by 8.6 degrees.</summary>
    public static BottomPlan Pressed => PressedOnce.Value;

    private static readonly Lazy<BottomPlan> PressedOnce = new(() =>
        BottomPlanner
            .Plan(
                Outside(
                    Bare(DemoPlans.Of("survey-launch").Job),
                    s => s with { FirstAlong = new FirstLine.AlongKeel() }
                ) with
                {
                    Cloths = [Stitched with { LocksAtDegrees = 10 }],
                }
            )
            .Plan!
    );

    /// <summary>A demo's planking alone, one skin of it: what is laid on it is cloth, and the rest takes the time.</summary>
    public static Job Bare(Job job) =>
        new(job.Planking with { Layers = [job.Layers[0]], Keel = KeelSpec.None });

    /// <summary>The job with one cloth more, outside all else, laid so.</summary>
    public static Job Outside(Job job, Func<SheathingSpec, SheathingSpec> how)
    {
        const string name = "cloth outside";
        SheathingSpec spec = how(Usual(name));
        return job with
        {
            Layers = job.Layers.Add(
                new ClothLayerSpec(name, 1)
                {
                    Lap = spec.Keel is ClothAtKeel.PastCentreLine { Mm: > 0 } past
                        ? new(2 * past.Mm, past.FromMm, past.ToMm)
                        : null,
                }
            ),
            Cloths = [Stitched, Woven],
            Sheathing = [spec],
        };
    }

    /// <summary>One or two cloths by chance, under and over the outermost planks.</summary>
    public static Job ByChance(Job job, Draw draw)
    {
        ImmutableArray<LayerSpec>.Builder layers = ImmutableArray.CreateBuilder<LayerSpec>();
        List<SheathingSpec> sheathing = [];
        foreach (LayerSpec layer in job.Layers)
        {
            layers.Add(layer);
            if (layer is PlankLayerSpec && (draw.Whole(0, 1) == 1 || layer == job.Layers[^1]))
            {
                string name = $"cloth on {layer.Name}";
                SheathingSpec spec = Spec(
                    name,
                    draw,
                    job.Offsets.Stations[job.Offsets.Stations.Length / 2].Name
                );
                layers.Add(
                    new ClothLayerSpec(name, draw.Between(0.4, 1.5))
                    {
                        Lap = spec.Keel is ClothAtKeel.PastCentreLine { Mm: > 0 } past
                            ? new(2 * past.Mm, null, null)
                            : null,
                    }
                );
                sheathing.Add(spec);
            }
        }

        return job with
        {
            Layers = layers.ToImmutable(),
            Cloths = [Stitched, Woven],
            Sheathing = [.. sheathing],
        };
    }

    private static SheathingSpec Spec(string layer, Draw draw, string station) =>
        new(layer, draw.OneOf(Stitched.Name, Woven.Name))
        {
            Keel =
                draw.Whole(0, 2) == 0
                    ? new ClothAtKeel.ShortOfEdge(draw.Between(0, 30))
                    : new ClothAtKeel.PastCentreLine(draw.Between(0, 80)),
            RoundChineMm = draw.OneOf(0, 0, draw.Between(20, 100)),
            RoundTransomMm = draw.OneOf(0, draw.Between(20, 80)),
            RoundStemMm = draw.OneOf(0, draw.Between(20, 80)),
            FirstAlong = draw.OneOf<FirstLine>(
                new FirstLine.Best(),
                new FirstLine.Best(),
                new FirstLine.AlongKeel(),
                new FirstLine.AlongChine(),
                new FirstLine.Point(station, draw.Between(0.3, 0.7)),
                new FirstLine.Straight(draw.Between(0.3, 0.7), draw.Between(-3, 3))
            ),
            SideFirst = draw.OneOf(Side.Starboard, Side.Port),
            Courses = draw.OneOf(
                CourseRule.FewestJoins,
                CourseRule.Along,
                CourseRule.Across,
                CourseRule.FewestMetres
            ),
            JoinLapMm = draw.Between(20, 80),
            ExcessMm = draw.Between(5, 40),
        };
}
