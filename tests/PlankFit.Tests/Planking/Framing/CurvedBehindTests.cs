using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Framing;

/// <summary>
/// What lies behind H2 (a hyperbolic paraboloid) and H3 (a general cylinder). The lines are worked here from the closed forms of the
/// surface and of its normal; where they cross a plank is searched for by brute force on the plank's own outline in space, and carried to the flat by the
/// part of the outline's side that is cut off there.
/// </summary>
public sealed class CurvedBehindTests
{
    private const double LengthMm = 6000;

    public static TheoryData<string> Hulls => ["hypar", "cylinder"];

    [Theory]
    [MemberData(nameof(Hulls))]
    public void CrossingsAgreeWithASearchInSpace(string hull)
    {
        var bottom = AnalyticBottom.Of(hull);
        BottomPlan plan = WholeBottomTests.Planned(bottom.Job(9, Things));
        int agreed = 0;
        double worst = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            foreach (Plank plank in layer.Starboard.Concat(layer.Port))
            {
                foreach (FramingSpec thing in Things)
                {
                    Func<double, Vec3> line = Line(bottom, thing, layer.NeutralOffsetMm, plank);
                    Vec2[] should = Search(plank, line);
                    Vec2[] ends =
                    [
                        .. plan
                            .Framing.On(plank.Id)
                            .Where(c => c.Of == thing && !c.Centre.IsEmpty)
                            .SelectMany(c => new[] { c.Centre[0], c.Centre[^1] }),
                    ];
                    if (should.Length == 2 && should[0].ChordTo(should[1]) < 1)
                    {
                        continue;
                    }

                    Assert.True(
                        should.Length == ends.Length,
                        $"{plank.Id}, {thing.Name}: {should.Length} found in space, {ends.Length} in the plan"
                    );
                    foreach (Vec2 end in ends)
                    {
                        worst = Math.Max(worst, should.Min(s => s.ChordTo(end)));
                        agreed++;
                    }
                }
            }
        }

        Assert.InRange(worst, 0, 0.05);
        Assert.True(agreed > 500, $"{agreed} crossings");
    }

    /// <summary>Every point of an edge, brought back along the normal to the inner face, lies half the width from the nearest place of the centre.</summary>
    [Theory]
    [MemberData(nameof(Hulls))]
    public void EdgesLieHalfAWidthFromTheCentreAlongTheSurface(string hull)
    {
        var bottom = AnalyticBottom.Of(hull);
        BottomPlan plan = WholeBottomTests.Planned(bottom.Job(9, Things));
        int held = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            foreach (Plank plank in layer.Starboard)
            {
                foreach (FramingCrossing c in plan.Framing.On(plank.Id))
                {
                    Func<double, Vec3> centre = Line(bottom, c.Of, 0, plank);
                    foreach (Vec2 flat in c.OneEdge.Concat(c.OtherEdge).Where((_, i) => i % 5 == 0))
                    {
                        Vec3 p = bottom.Foot(plank.Map.Point(flat));

                        // The chord is shorter than the way along the surface by w³/(24 R²): less than 1e-4 mm here.
                        double away = Nearest(centre, p, c.Of.IsAcross);
                        Assert.InRange(away, (c.Of.WidthMm / 2) - 0.02, (c.Of.WidthMm / 2) + 0.02);
                        held++;
                    }
                }
            }
        }

        Assert.True(held > 400, $"{held} points");
    }

    /// <summary>A strip between two parallels of a line has the area width times length, its ends cut off alike on both sides; the length by chords of the closed form.</summary>
    [Theory]
    [MemberData(nameof(Hulls))]
    public void CoversAddUpToTheStrip(string hull)
    {
        var bottom = AnalyticBottom.Of(hull);
        BottomPlan plan = WholeBottomTests.Planned(bottom.Job(1e-4, Things));
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            foreach (FramingSpec thing in Things)
            {
                Func<double, Vec3> line = Line(bottom, thing, 0, layer.Starboard[0]);
                double length = 0;
                const int n = 20000;
                Vec3 End(double part) =>
                    thing.IsAcross
                        ? bottom.OnSection(Station, part * bottom.SectionMm(Station))
                        : line(part * LengthMm);
                for (int i = 0; i < n; i++)
                {
                    length += End((double)i / n).ChordTo(End((i + 1.0) / n));
                }

                foreach (Side side in new[] { Side.Starboard, Side.Port })
                {
                    double area = layer
                        .On(side)
                        .SelectMany(p => plan.Framing.On(p.Id))
                        .Where(c => c.Of == thing)
                        .Sum(c => Area(c.Cover));
                    Assert.Equal(1, area / (thing.WidthMm * length), 0.001);
                }
            }
        }
    }

    private const double Station = 2500;

    private static readonly ImmutableArray<FramingSpec> Things =
    [
        new("S1", FramingKind.Stringer, new FramingLine.FromKeel(420), 60, null, null),
        new("S2", FramingKind.Stringer, new FramingLine.FromChine(250), 45, null, null),
        new("F", FramingKind.Frame, new FramingLine.AtPosition(Station), 50, null, null),
    ];

    /// <summary>The centre in space, on the surface at an offset, on the plank's side of the boat: x, or for a frame the distance from the keel, is the parameter.</summary>
    private static Func<double, Vec3> Line(
        AnalyticBottom bottom,
        FramingSpec thing,
        double offsetMm,
        Plank plank
    ) =>
        t =>
        {
            Vec3 p = thing.Line switch
            {
                FramingLine.FromKeel(var mm) => bottom.OnSection(t, mm),
                FramingLine.FromChine(var mm) => bottom.OnSection(t, bottom.SectionMm(t) - mm),
                _ => bottom.OnSection(Station, t),
            };
            Vec3 q = p + (offsetMm * bottom.Normal(p));
            return plank.Side == Side.Port ? q.MirroredInY() : q;
        };

    /// <summary>
    /// Where a curve meets the outline: the two are nearest to one another there, and touch. Every side of the outline is searched along the curve,
    /// coarsely and then by halving.
    /// </summary>
    private static Vec2[] Search(Plank plank, Func<double, Vec3> line)
    {
        var meets = new List<Vec2>();
        const double step = 10;
        int n = plank.Outline.Length;
        for (double t = -40; t < LengthMm + 40; t += step)
        {
            Vec3 a = line(t),
                b = line(t + step);
            for (int i = 0; i < n; i++)
            {
                Vec3 c = plank.Outline[i],
                    d = plank.Outline[(i + 1) % n];
                if (c.ChordTo(a) > 3 * step + c.ChordTo(d))
                {
                    continue;
                }

                // Curve and side lie on one surface and are short: they cross where the mixed product changes sign both ways, seen along the normal.
                Vec3 normal = (b - a).Cross(d - c);
                if (normal.Norm < 1e-9)
                {
                    continue;
                }

                Vec3 up = normal.Unit();
                double Side(Vec3 p) => (p - c).Cross(d - c).Dot(up);
                if (Side(a) < 0 == Side(b) < 0)
                {
                    continue;
                }

                double low = t,
                    high = t + step;
                for (int k = 0; k < 50; k++)
                {
                    double middle = (low + high) / 2;
                    (low, high) =
                        Side(line(middle)) < 0 == Side(a) < 0 ? (middle, high) : (low, middle);
                }

                Vec3 meet = line(low);
                double part = (meet - c).Dot(d - c) / (d - c).NormSquared;
                if (part is >= 0 and < 1)
                {
                    // They truly touch: the outline's chord leaves its curve by 0.002 mm.
                    Assert.InRange(meet.ChordTo(c + (part * (d - c))), 0, 0.02);
                    meets.Add(
                        plank.FlatNet[i] + (part * (plank.FlatNet[(i + 1) % n] - plank.FlatNet[i]))
                    );
                }
            }
        }

        return [.. meets];
    }

    private static double Nearest(Func<double, Vec3> line, Vec3 p, bool across)
    {
        double low = across ? -100 : p.X - 100,
            high = across ? 1300 : p.X + 100;
        double best = Enumerable
            .Range(0, 201)
            .Select(i => low + ((high - low) * i / 200))
            .MinBy(t => line(t).ChordTo(p));
        (low, high) = (best - ((high - low) / 200), best + ((high - low) / 200));
        for (int k = 0; k < 60; k++)
        {
            double a = low + ((high - low) / 3),
                b = high - ((high - low) / 3);
            (low, high) = line(a).ChordTo(p) < line(b).ChordTo(p) ? (low, b) : (a, high);
        }

        return line(low).ChordTo(p);
    }

    private static double Area(ImmutableArray<Vec2> outline)
    {
        double twice = 0;
        for (int i = 0; i < outline.Length; i++)
        {
            twice += outline[i].Cross(outline[(i + 1) % outline.Length]);
        }

        return twice / 2;
    }
}
