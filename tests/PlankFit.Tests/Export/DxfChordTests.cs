using CsCheck;
using PlankFit.Draughting.Dxf;
using PlankFit.Export.Patterns;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export;

/// <summary>What a cutter is given: chords within 0.01 mm of the shape, no vertex nearer than 0.05 mm to the next, corners where they are.</summary>
public sealed class DxfChordTests(ITestOutputHelper output)
{
    private const double WithinMm = 0.01;

    /// <summary>The plan's own chords lie within this of the shape.</summary>
    private const double PlannedMm = 0.002;

    private const double ApartMm = 0.05;

    /// <summary>What rounding to 0.0001 mm, or to a millionth of an inch, moves.</summary>
    private const double RoundedMm = 0.0001;

    [Fact]
    public void PlanksOfHullsByChanceAreHeldToTheirShapes()
    {
        (int planks, int vertices, int before) = Hulls(LongRuns.Of(2, 100), null);
        output.WriteLine($"{planks} planks, {before} vertices of the plan, {vertices} written");
        Assert.True(planks > 50);
        Assert.True(vertices < 0.1 * before);
    }

    private static (int Planks, int Vertices, int Before) Hulls(int draws, string? seed)
    {
        int planks = 0,
            vertices = 0,
            before = 0;
        RandomHull.Gen.Sample(
            job =>
            {
                if (BottomPlanner.Plan(job).Plan is not { } plan)
                {
                    return;
                }

                foreach (
                    (Plank plank, int i) in plan
                        .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
                        .Select((p, i) => (p, i))
                )
                {
                    double unit = i % 2 == 0 ? 1 : 25.4;
                    Vec2[][] closed = Closed(
                        plan,
                        plank,
                        unit == 1 ? DxfUnit.Millimetre : DxfUnit.Inch
                    );
                    Held($"{plank.Id} to saw", plank.FlatCut, closed[0]);
                    Held($"{plank.Id} net", plank.FlatNet, closed[1]);
                    Interlocked.Add(ref vertices, closed[0].Length);
                    Interlocked.Add(ref before, plank.FlatCut.Length);
                    Interlocked.Increment(ref planks);
                }
            },
            seed: seed,
            iter: draws,
            threads: seed is null ? 2 : 1
        );
        return (planks, vertices, before);
    }

    /// <summary>A draw of chance: a corner piece that runs out to an end of 0.03 mm, neither of whose corners can be left out.</summary>
    [Fact]
    public void AnEndOfAHairKeepsBothItsCorners() => Hulls(1, "4OMA5o4Jgbm4");

    /// <summary>A circle of 300 mm: chords of 2·√(2·300·0.0079) = 4.35 mm at most, and no more than half as many again as that asks for.</summary>
    [Fact]
    public void ARoundEdgeHasNoMoreVerticesThanItsRadiusAsksFor()
    {
        const int n = 4000;
        Vec2[] circle =
        [
            .. Enumerable
                .Range(0, n)
                .Select(i => new Vec2(
                    300 * Math.Cos(2 * Math.PI * i / n),
                    300 * Math.Sin(2 * Math.PI * i / n)
                )),
        ];
        Vec2[] written = Written(circle);
        Held("circle", circle, written);
        double asked = 2 * Math.PI * 300 / (2 * Math.Sqrt(2 * 300 * 0.0079));
        Assert.InRange(written.Length, asked, 1.5 * asked);
    }

    /// <summary>Corners that Douglas and Peucker would pass by for a vertex beside them; a nick too small to saw goes, one that a chord may not cut off stays.</summary>
    [Fact]
    public void CornersStayWhereTheyAre()
    {
        Vec2[] shape =
        [
            new(0, 0),
            new(0.004, -0.003),
            new(500, 0),
            new(500, 100),
            new(250, 100.006),
            new(200.02, 100),
            new(200, 100),
            new(200, 101),
            new(0, 101),
        ];
        Vec2[] written = Written(shape);
        Assert.Contains(new Vec2(500, 100), written);
        Assert.Contains(new Vec2(200, 101), written);
        Assert.Contains(new Vec2(200, 100), written);
        Assert.DoesNotContain(new Vec2(250, 100.006), written);
        Assert.DoesNotContain(new Vec2(200.02, 100), written);
        Assert.Single(written, p => p.Norm < 0.01);
        Held("shape", shape, written);
    }

    [Theory]
    [InlineData(DxfVersion.R12)]
    [InlineData(DxfVersion.R2000)]
    public void TheFileSaysHowNearItsLinesAre(DxfVersion version)
    {
        using var made = new MemoryStream();
        DxfWriter.Write(made, SampleDrawings.Everything, new(version, DxfUnit.Inch));
        Assert.StartsWith(
            "999\r\nPlankFit: every line is within 0.01 mm of its shape\r\n0\r\nSECTION\r\n",
            System.Text.Encoding.ASCII.GetString(made.ToArray()),
            StringComparison.Ordinal
        );
    }

    private static void Held(string what, IReadOnlyList<Vec2> shape, Vec2[] drawn)
    {
        Assert.True(PlanarShapes.IsSimple([.. drawn]), what);
        Assert.All(shape, p => Assert.InRange(Off(drawn, p), 0, WithinMm - PlannedMm + RoundedMm));
        Assert.All(drawn, p => Assert.InRange(shape.Min(v => v.ChordTo(p)), 0, RoundedMm));
        for (int i = 0; i < drawn.Length; i++)
        {
            int next = (i + 1) % drawn.Length;
            Assert.True(
                drawn[i].ChordTo(drawn[next]) >= ApartMm || (Needed(i) && Needed(next)),
                $"{what}: {drawn[i]} and the next are too near"
            );
        }

        // Without it the shape would lie further off than a chord may: a plank's end 0.03 mm wide keeps both its corners.
        bool Needed(int i)
        {
            Vec2[] without = [.. drawn.Where((_, k) => k != i)];
            return shape.Any(p => Off(without, p) > WithinMm - PlannedMm - RoundedMm);
        }

        int n = shape.Count;
        for (int i = 0; i < n; i++)
        {
            Vec2 came = shape[i] - shape[(i + n - 1) % n],
                goes = shape[(i + 1) % n] - shape[i];
            if (
                came.Norm > 1
                && goes.Norm > 1
                && Math.Abs(Math.Atan2(came.Cross(goes), came.Dot(goes))) > 0.1
            )
            {
                Assert.True(
                    drawn.Min(v => v.ChordTo(shape[i])) < RoundedMm,
                    $"{what}: the corner {shape[i]} is lost"
                );
            }
        }
    }

    private static double Off(Vec2[] polygon, Vec2 p)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < polygon.Length; i++)
        {
            Vec2 a = polygon[i],
                run = polygon[(i + 1) % polygon.Length] - a;
            least = Math.Min(
                least,
                (p - a - (Math.Clamp((p - a).Dot(run) / run.Dot(run), 0, 1) * run)).Norm
            );
        }

        return least;
    }

    private static Vec2[] Written(Vec2[] shape)
    {
        Drawing drawing = SampleDrawings.Of(
            900,
            900,
            new Polyline("cut", Pen.Thin, [.. shape], true)
        );
        return Read(drawing, DxfUnit.Millimetre).Single(l => l.Closed).Points;
    }

    /// <summary>The outline to saw and the net outline, as the plank's file has them, in mm.</summary>
    private static Vec2[][] Closed(BottomPlan plan, Plank plank, DxfUnit unit) =>
        [
            .. Read(CuttingPattern.Of(OnPlanks.Of(plan), plank), unit)
                .Where(l => l.Closed)
                .Select(l => l.Points),
        ];

    private static IEnumerable<(bool Closed, Vec2[] Points)> Read(Drawing drawing, DxfUnit unit)
    {
        using var made = new MemoryStream();
        DxfWriter.Write(made, drawing, new(DxfVersion.R2000, unit));
        double mm = unit == DxfUnit.Inch ? 25.4 : 1;
        return new DxfReading(made.ToArray())
            .Lines()
            .Select(l => (l.Closed, l.Points.Select(p => mm * new Vec2(p.X, p.Y)).ToArray()));
    }
}
