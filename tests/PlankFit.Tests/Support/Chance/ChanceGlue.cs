using System.Collections.Immutable;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Support.Chance;

/// <summary>A job with resin, glue, crew and clock by chance, some of them such that nothing can be glued in time; and every cloth layer cut from something.</summary>
internal static class ChanceGlue
{
    public static Job Added(Job job, int seed)
    {
        var draw = new Draw(seed);
        ImmutableArray<ClothSpec> cloths =
        [
            new("chance", ClothKind.Stitched, 600, [45, -45], [new(1270, 50000)])
            {
                GlassContent = new(0.4, 0.5, 0.55),
                MatGlassContent = new(0.25, 0.3, 0.35),
                LocksAtDegrees = 40,
            },
        ];
        ImmutableArray<SheathingSpec> lies =
        [
            .. job
                .Layers.OfType<ClothLayerSpec>()
                .Select(l => new SheathingSpec(l.Name, "chance")
                {
                    Keel = new ClothAtKeel.PastCentreLine(0),
                }),
        ];
        return job with
        {
            // By draws of their own, so that a seed keeps what it had.
            Glue = HeldAndFilled(Spec(draw), new Draw(seed + 7919)),
            Cloths = cloths,
            Sheathing = lies,
            Structure = new()
            {
                PressureMPa = draw.Heads() ? 0.02 : null,
                SpanMm = draw.Heads() ? draw.Between(150, 400) : null,
            },
        };
    }

    public static GlueSpec Spec(Draw draw)
    {
        Mix resin = Product(draw, "resin");
        return new(resin, draw.Heads() ? Product(draw, "glue") : null)
        {
            FilmMm = new(0.1, draw.Between(0.15, 0.3), 0.5),
            PrimingGsm = draw.Heads() ? new Estimate(100, draw.Between(120, 180), 200) : null,
            WeaveGsm = draw.Heads() ? new Estimate(100, 200, 300) : null,
            Fillets = draw.Heads() ? [new("a corner", new(12, draw.Between(60, 120)), 8000)] : [],
            Fairing = draw.Heads() ? new FairingSpec(0.8, 0.3) : null,
            Cup = draw.Heads() ? new Cup(35, 0.1) { RimMm = 110 } : null,
            Crew = new(draw.Whole(2, 6))
            {
                MixMinutes = draw.Whole(2, 6),
                SpreadMinutes = draw.Whole(1, 5),
                FastenMinutes = draw.Whole(4, 18),
                WaitMinutes = draw.Whole(4, 15),
                WetMinutesPerM2 = draw.Between(2, 9),
                MostGrams = draw.Heads(0.3) ? draw.Between(200, 900) : null,
            },
            Clock = new(
                draw.Heads() ? [(480, 720), (780, 1020)] : [(420, 420 + (60 * draw.Whole(3, 9)))],
                new([
                    (draw.Whole(300, 500), draw.Between(12, 20)),
                    (draw.Whole(700, 900), draw.Between(15, 30)),
                ])
            ),
        };
    }

    private static GlueSpec HeldAndFilled(GlueSpec spec, Draw draw) =>
        spec with
        {
            Fillers = draw.Heads()
                ? [new("silica", FillerInto.All, new(40, 60, 90)) { KgPerLitre = 2.2 }]
                : [],
            Crew = spec.Crew! with
            {
                HeldBy = draw.Heads() ? "battens" : null,
                HoldsPlanks = draw.Whole(1, 4),
                ClampsOnHand = draw.Heads() ? draw.Whole(20, 400) : null,
            },
        };

    private static Mix Product(Draw draw, string name)
    {
        double life = draw.Between(25, 90),
            open = life * draw.Between(1.2, 3),
            cure = draw.Between(300, 1800);
        return new(
            name,
            new(draw.OneOf(1, 2, 3, 5), draw.Between(1.1, 1.2), draw.Between(0.93, 1.05)),
            new(
                ClockLaw.Through([
                    new(15, 1.5 * life, 100),
                    new(25, life, 100),
                    new(25, 0.6 * life, 600),
                ])!,
                ClockLaw.Through([new(15, 1.5 * open), new(25, open)])!
            )
            {
                Sandable = ClockLaw.Through([new(15, 1.5 * cure), new(25, cure)]),
                Tacky = draw.Heads(0.7) ? Window(0.15 * cure, 0.4 * cure) : null,
                Recoat = draw.Heads(0.7) ? Window(0.2 * cure, 2.5 * cure) : null,
            }
        )
        {
            UsePart = draw.Between(0.5, 0.9),
            Waste = draw.Between(0, 0.2),
        };
    }

    private static ClockWindow Window(double from, double to) =>
        new(
            ClockLaw.Through([new(15, 1.5 * from), new(25, from)])!,
            ClockLaw.Through([new(15, 1.5 * to), new(25, to)])!
        );
}
