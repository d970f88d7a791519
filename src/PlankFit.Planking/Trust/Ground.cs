using MathNet.Numerics.Integration;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Seams;

namespace PlankFit.Planking.Trust;

/// <summary>A seam as a tape finds it on the inner face: its marks along keel and chine, mm from the layer's station, null where it does not meet them, and its length.</summary>
internal readonly record struct TapedAt(double? KeelMm, double? ChineMm, double LengthMm);

/// <summary>One layer's seams on a hull, and what is read off them there.</summary>
internal sealed class Ground
{
    /// <summary>Chords by which a seam's length on the inner face is found; with their halves by Richardson within 1e-4 mm.</summary>
    private const int Chords = 32;

    /// <summary>So far an own line is followed past the bottom, mm.</summary>
    private const double OwnReachMm = 10;

    private readonly Seam?[] seams;
    private readonly TapedAt?[] taped;
    private readonly PlankLayerSpec spec;
    private readonly Tracing tracing,
        own;

    public Ground(
        PlankLayerSpec spec,
        LayerRegion middle,
        LayerRegion inner,
        KeelSideFace keelSide,
        double hookU,
        Seam?[] seams,
        Tracing tracing
    )
    {
        (this.spec, this.seams, this.tracing) = (spec, seams, tracing);
        // Of an own line only what lies on the bottom is asked for.
        own = tracing with
        {
            ReachMm = OwnReachMm,
        };
        (Middle, Inner, KeelSide) = (middle, inner, keelSide);
        taped = Tape(hookU);
    }

    public LayerRegion Middle { get; }

    public LayerRegion Inner { get; }

    public KeelSideFace KeelSide { get; }

    public Seam? Seam(int index) => index >= 0 && index < seams.Length ? seams[index] : null;

    public TapedAt? Taped(int index) => index >= 0 && index < seams.Length ? taped[index] : null;

    /// <summary>The own line of each plank; null of a corner piece.</summary>
    public Seam?[] OwnLines(int planks) => [.. Enumerable.Range(0, planks).Select(OwnLine)];

    private Seam? OwnLine(int plank) =>
        Seam(plank - 1) is { } forward && Seam(plank) is { } after
            ? Tried.Or(() =>
                Crossings.Find(Middle, SeamFamily.OwnLine(Middle, spec, forward, after, own))
            )
            : null;

    /// <summary>Own lines, edge to edge, of corner pieces as well: of these half the stock's width from the one seam that they have.</summary>
    public Seam?[] Lines(int planks) =>
        [
            .. Enumerable
                .Range(0, planks)
                .Select(i =>
                    Seam(i - 1) is null && Seam(i) is null
                        ? null
                        : Tried.Or(() =>
                            Crossings.Find(
                                Middle,
                                SeamFamily.OwnLine(Middle, spec, Seam(i - 1), Seam(i), tracing)
                            )
                        )
                ),
        ];

    private TapedAt?[] Tape(double hookU)
    {
        var found = new TapedAt?[seams.Length];
        double keelU = hookU,
            chineU = hookU,
            keelMm = 0,
            chineMm = 0;
        for (int i = 0; i < seams.Length; i++)
        {
            if (seams[i] is not { } seam)
            {
                continue;
            }

            double low = TapeReadings.MeetFace(Inner, seam);
            double? keel = null,
                chine = null;
            if (seam.In.Edge == PanelEdge.Lower)
            {
                double u = seam.Line.UvAt(low).U;
                keelMm += Length(KeelRate, keelU, u);
                (keelU, keel) = (u, keelMm);
            }

            if (seam.Out.Edge == PanelEdge.Upper)
            {
                double u = seam.Out.Uv.U;
                chineMm += Length(ChineRate, chineU, u);
                (chineU, chine) = (u, chineMm);
            }

            found[i] = new(keel, chine, LengthOf(seam, low));
        }

        return found;
    }

    private Vec3 KeelRate(double u)
    {
        SurfacePoint p = Inner.Surface.At(u, Inner.LowerV(u));
        return p.Du + (Inner.LowerVRate(u) * p.Dv);
    }

    /// <summary>The upper edge is v = 1, but for a point forward, from which v is the distance.</summary>
    private Vec3 ChineRate(double u)
    {
        const double step = 0.01;
        SurfacePoint p = Inner.Surface.At(u, Inner.UpperV(u));
        double rate =
            Inner.UpperV(u) == 1 && Inner.UpperV(u + step) == 1
                ? 0
                : (Inner.UpperV(u + step) - Inner.UpperV(u - step)) / (2 * step);
        return p.Du + (rate * p.Dv);
    }

    /// <summary>Signed length of a curve by its speed: five points of Gauss and Legendre to every 100 mm.</summary>
    private static double Length(Func<double, Vec3> rate, double from, double to)
    {
        int parts = Math.Max(1, (int)Math.Ceiling(Math.Abs(to - from) / 100));
        double sum = 0,
            step = (to - from) / parts;
        for (int i = 0; i < parts; i++)
        {
            sum += GaussLegendreRule.Integrate(
                u => rate(u).Norm,
                from + (i * step),
                from + ((i + 1) * step),
                5
            );
        }

        return sum;
    }

    private double LengthOf(Seam seam, double low)
    {
        Vec3 At(int i) => Inner.PointAt(seam.Line.UvAt(low + ((seam.Out.S - low) * i / Chords)));
        double fine = 0,
            coarse = 0;
        Vec3 first = At(0),
            before = first;
        for (int i = 1; i <= Chords; i++)
        {
            Vec3 p = At(i);
            fine += before.ChordTo(p);
            before = p;
            if (i % 2 == 0)
            {
                coarse += first.ChordTo(p);
                first = p;
            }
        }

        return fine + ((fine - coarse) / 3);
    }
}
