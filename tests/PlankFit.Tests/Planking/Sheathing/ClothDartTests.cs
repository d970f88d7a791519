using System.Collections.Immutable;
using MathNet.Numerics.Integration;
using PlankFit.Export.Sheathing;
using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Geometry;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>Darts where a cloth will not lie: their tips where it bears no more, their angle what is too much.</summary>
public sealed class ClothDartTests
{
    private const double R = 3000;

    /// <summary>
    /// On a sphere from a great circle sin g = sin²(t/R): with 8 degrees borne a piece 600 wide has too much from the distance on where g is that, all of which one tip has between its
    /// threads that lies 300 nearer the line; its angle is what the worst mesh has beyond, and it runs along a thread, 45 degrees to the roll, to the edge.
    /// </summary>
    [Theory]
    [InlineData(25)]
    [InlineData(10)]
    public void OnASphereTheTipLiesWhereNoMoreIsBorne(double mesh)
    {
        const double bears = 8;
        var sphere = new SphereSurface(R);
        var ground = new ClothGround(
            sphere,
            at => Math.Max(Math.Abs(at.U * R) - 1900, Math.Abs(at.V * R) - 1700)
        );
        var line = LaidLine.Straight(ground, new(0, 0), Vec3.UnitY, 200);
        int left = sphere.At(0, 0).Left(Vec3.UnitY).Z > 0 ? 1 : -1;
        ClothNet net = ClothLaying.Along(ground, line, left, mesh);
        Vec2[] cut = [new(-300, -100), new(300, -100), new(300, 1400), new(-300, 1400)];
        var darts = ClothDarts.Of(net, [.. cut], bears, false);
        ClothDart first = darts.Darts[0];
        double t = R * Math.Asin(Math.Sqrt(Math.Sin(bears * Math.PI / 180))),
            q = GaussLegendreRule.Integrate(
                s => 1 / Math.Sqrt(1 + Math.Pow(Math.Sin(s / R), 2)),
                0,
                t,
                40
            ),
            worst = net
                .OnGround.Where(m => FlatPolygon.Holds(cut, m.Middle))
                .Max(m => m.ShearDegrees);
        // To a mesh's diagonal.
        Assert.Equal(q - 300, first.Tip.Y, mesh * 1.5);
        Assert.Equal(0, first.Tip.X, mesh * 1.5);
        Assert.Equal(worst - bears, first.Degrees, 1e-9);
        Assert.True(first.Laps);
        Vec2 along = (first.Mouth - first.Tip).Unit();
        Assert.Equal(Math.Sqrt(0.5), Math.Abs(along.X), 1e-9);
        Assert.Equal(Math.Sqrt(0.5), along.Y, 1e-9);
        Assert.Equal(
            2 * first.LengthMm * Math.Tan(first.Degrees * Math.PI / 360),
            first.WidthMm,
            1e-9
        );
        Assert.Single(darts.Darts);
        Assert.Equal(bears, darts.LeftDegrees, 1e-6);
    }

    /// <summary>
    /// Pinned at a point of a sphere cloth is too much in all four quadrants, by the curvature of what its two threads cut off, x y/R² to the fourth order, whichever sign the
    /// net gives its shear there: every dart laps, one a quadrant, its tip where no more than is borne is cut off.
    /// </summary>
    [Fact]
    public void PinnedAtAPointOfASphereEveryDartLaps()
    {
        const double bears = 4;
        var ground = new ClothGround(
            new SphereSurface(R),
            at => Math.Max(Math.Abs(at.U * R) - 1700, Math.Abs(at.V * R) - 1700)
        );
        var line = LaidLine.Straight(ground, new(0, 0), Vec3.UnitY, 200);
        ClothNet net = ClothLaying.FromThread(ground, ClothWeave.Square, line, 1, 25);
        const double reach = 1100;
        ImmutableArray<Vec2> cut =
        [
            new(-reach, -reach),
            new(reach, -reach),
            new(reach, reach),
            new(-reach, reach),
        ];
        var darts = ClothDarts.Of(net, cut, bears, true);
        ClothMesh[] on = [.. net.OnGround.Where(m => FlatPolygon.Holds(cut, m.Middle))];
        // Both signs are there, and both are too much.
        Assert.True(on.Max(m => m.ShearDegrees) > bears && on.Min(m => m.ShearDegrees) < -bears);
        Assert.Equal(4, darts.Darts.Length);
        Assert.Equal(4, darts.Darts.Select(d => (d.Tip.X > 0, d.Tip.Y > 0)).Distinct().Count());
        double corner = reach - 12.5,
            most = corner * corner / (R * R) * 180 / Math.PI;
        Assert.All(
            darts.Darts,
            d =>
            {
                Assert.True(d.Laps);
                Assert.Equal(most - bears, d.Degrees, 0.25);
                Assert.Equal(bears * Math.PI / 180 * R * R / reach, Math.Abs(d.Tip.X), 60.0);
                Assert.Equal(Math.Abs(d.Tip.X), Math.Abs(d.Tip.Y), 30.0);
            }
        );
    }

    /// <summary>Nor does a dart take off more than is borne, which is what it turns the other way where there was no shear.</summary>
    [Fact]
    public void NoDartTurnsMoreThanIsBorne()
    {
        const double bears = 2;
        var sphere = new SphereSurface(R);
        var ground = new ClothGround(
            sphere,
            at => Math.Max(Math.Abs(at.U * R) - 1900, Math.Abs(at.V * R) - 1700)
        );
        var line = LaidLine.Straight(ground, new(0, 0), Vec3.UnitY, 200);
        int left = sphere.At(0, 0).Left(Vec3.UnitY).Z > 0 ? 1 : -1;
        ClothNet net = ClothLaying.Along(ground, line, left, 25);
        Vec2[] cut = [new(-300, -100), new(300, -100), new(300, 1300), new(-300, 1300)];
        var darts = ClothDarts.Of(net, [.. cut], bears, false);
        Assert.True(darts.Darts.Length > 1);
        Assert.Equal(bears, darts.Darts[0].Degrees, 1e-9);
        Assert.All(darts.Darts, d => Assert.InRange(d.Degrees, 1, bears));
    }

    /// <summary>Nothing is cut into what lies: the launch's cloth, which is sheared by less than a degree, has none.</summary>
    [Fact]
    public void WhatLiesHasNone() =>
        Assert.All(GluedLaunch.Plan.Sheathing!.Pieces, p => Assert.Empty(p.Darts));

    /// <summary>Pressed along the keel the launch's cloth is sheared by 8.6 degrees: a cloth that locks at 10 has darts on its pieces, on both sides alike.</summary>
    [Fact]
    public void PressedAlongTheKeelAStiffClothHasThemOnBothSides()
    {
        BottomPlan whole = SheathedJobs.Pressed;
        SheathingPlan plan = whole.Sheathing!;
        SheathedSide side = plan.Layers.Single().Sides.Single();
        Assert.NotEmpty(side.Darts.Darts);
        Assert.True(side.Darts.LeftDegrees < side.MostShear - 1);
        // Half of the ten at which it locks is borne.
        Assert.Equal(
            side.Net.OnGround.Where(m => FlatPolygon.Holds(side.Cut, m.Middle))
                .Max(m => Math.Abs(m.ShearDegrees)) - 5,
            side.Darts.Darts[0].Degrees,
            1e-9
        );
        foreach (ClothDart dart in side.Darts.Darts)
        {
            // By the shorter of the two ways out along a thread, away from the keel.
            double[] ways =
            [
                .. new[] { side.Net.Weave.First, side.Net.Weave.Second }
                    .Select(t => Math.Sign(t.Y * dart.Tip.Y) * t)
                    .Select(t =>
                        (double)
                            Enumerable
                                .Range(1, 5000)
                                .First(mm => !FlatPolygon.Holds(side.Cut, dart.Tip + (mm * t)))
                    ),
            ];
            Assert.InRange(dart.LengthMm, ways.Min() - 1, ways.Min());
            Assert.True(ways.Max() > ways.Min() + 5);
        }

        Assert.All(plan.Pieces.SelectMany(p => p.Darts), d => Assert.True(d.FromTipMm >= 0));
        ClothPiece[] starboard = [.. plan.Pieces.Where(p => p.Side == Side.Starboard)],
            port = [.. plan.Pieces.Where(p => p.Side == Side.Port)];
        Assert.Equal(side.Darts.Darts.Length, starboard.Sum(p => p.Darts.Length));
        foreach ((ClothPiece s, ClothPiece p) in starboard.Zip(port))
        {
            foreach ((ClothDart a, ClothDart b) in s.Darts.Zip(p.Darts))
            {
                Assert.Equal(a.LengthMm, b.LengthMm, 1e-6);
                Assert.Equal(a.WidthMm, b.WidthMm, 1e-6);
                Assert.Equal(s.LengthMm - a.Tip.X, b.Tip.X, 1e-6);
                Assert.Equal(a.Tip.Y, b.Tip.Y, 1e-6);
            }
        }

        Drawing[] sheets = [.. SheathingSheets.Of(whole, plan)];
        Assert.Contains(sheets, s => s.Title.Contains("darts", StringComparison.Ordinal));
        Assert.Empty(
            sheets.SelectMany(s => SheetCheck.Faults(s).Concat(SheetCheck.Struck(s, _ => true)))
        );
        Assert.All(
            plan.Pieces.Where(p => !p.Darts.IsEmpty),
            p =>
                Assert.Equal(
                    p.Darts.Length,
                    ClothPattern
                        .Of(whole, p)
                        .Shapes.OfType<Lettering>()
                        .Count(l => l.Text.StartsWith("dart ", StringComparison.Ordinal))
                )
        );
        Assert.Contains(
            plan.Findings,
            f => f.Message.Contains("from the edge, drawn on the pieces", StringComparison.Ordinal)
        );
    }

    /// <summary>
    /// Off a narrow roll a dart crosses several courses: each is cut where the dart lies on it, by places a millimetre apart, and laps or opens at its edge by so much as the whole
    /// dart does there.
    /// </summary>
    [Fact]
    public void OffANarrowRollADartIsCutThroughEveryCourseThatItCrosses()
    {
        Job job = SheathedJobs.Pressed.Job;
        BottomPlan whole = BottomPlanner
            .Again(
                SheathedJobs.Pressed,
                job with
                {
                    Cloths = [job.Cloths[0] with { Rolls = [new(260, 50_000)] }],
                },
                null,
                TestContext.Current.CancellationToken
            )
            .Plan!;
        SheathingPlan plan = whole.Sheathing!;
        SheathedSide side = plan.Layers.Single().Sides.Single();
        ClothPiece[] pieces = [.. plan.Pieces.Where(p => p.Side == Side.Starboard)];
        Assert.Equal(side.Courses.Parts.Length, pieces.Length);
        int crossed = 0;
        for (int i = 0; i < pieces.Length; i++)
        {
            int inside = side.Darts.Darts.Sum(d =>
                Enumerable
                    .Range(0, (int)d.LengthMm)
                    .Count(mm =>
                        FlatPolygon.Holds(
                            side.Courses.Parts[i].Outline,
                            d.Tip + ((mm + 0.5) * (d.Mouth - d.Tip).Unit())
                        )
                    )
            );
            Assert.Equal(inside, pieces[i].Darts.Sum(d => d.LengthMm), 3.0);
            crossed += pieces[i].Darts.Count(d => d.Crosses);
        }

        Assert.True(crossed > 0);
        foreach (ClothDart dart in side.Darts.Darts)
        {
            // At the edge of the whole cloth, on the one course that has it, it is as wide as the whole.
            Assert.Contains(
                pieces.SelectMany(p => p.Darts),
                d =>
                    Math.Abs(d.WidthMm - dart.WidthMm) < 1e-6
                    && Math.Abs(d.FromTipMm + d.LengthMm - dart.LengthMm) < 1e-6
            );
        }

        Drawing[] sheets = [.. SheathingSheets.Of(whole, plan)];
        Assert.Contains(
            sheets.SelectMany(s => s.Shapes.OfType<Lettering>()),
            l => l.Text.EndsWith(" through", StringComparison.Ordinal)
        );
        AreStruckWhereTheyLie(plan, sheets);
        Assert.Empty(
            sheets.SelectMany(s => SheetCheck.Faults(s).Concat(SheetCheck.Struck(s, _ => true)))
        );
    }

    /// <summary>Row by row as the list has them: each end where it lies on the roll, from the piece's own beginning, what goes through from edge to edge of its piece.</summary>
    private static void AreStruckWhereTheyLie(SheathingPlan plan, Drawing[] sheets)
    {
        string[] words =
        [
            .. sheets
                .Where(s => s.Title.Contains("darts", StringComparison.Ordinal))
                .SelectMany(s => s.Shapes.OfType<Lettering>())
                .Select(l => l.Text),
        ];
        foreach (PieceOnRoll piece in plan.Rolls.SelectMany(r => r.Rolls).SelectMany(r => r.Pieces))
        {
            double from = piece.Outline.Min(p => p.X);
            foreach (ClothDart dart in piece.Piece.Darts)
            {
                Vec2 mouth = piece.OnRoll(dart.Mouth),
                    tip = piece.OnRoll(dart.Tip);
                Assert.InRange(OffOutline(piece, mouth), 0, 0.1);
                if (dart.Crosses)
                {
                    Assert.InRange(OffOutline(piece, tip), 0, 0.1);
                }

                string Mm(double mm) => LengthText.PaperNumber(mm, LengthUnit.Millimetre);
                string[] row =
                [
                    Mm(mouth.X - from),
                    Mm(mouth.Y),
                    Mm(tip.X - from),
                    Mm(tip.Y),
                    Mm(mouth.ChordTo(tip)),
                    $"{(dart.Laps ? "laps" : "opens")} {Mm(dart.WidthMm)} mm",
                ];
                Assert.Contains(
                    Enumerable.Range(0, words.Length - row.Length),
                    i => words.Skip(i).Take(row.Length).SequenceEqual(row)
                );
            }
        }
    }

    private static double OffOutline(PieceOnRoll piece, Vec2 at) =>
        piece
            .Outline.Select(
                (p, i) =>
                {
                    Vec2 side = piece.Outline[(i + 1) % piece.Outline.Length] - p;
                    double part = side.Norm > 0 ? (at - p).Dot(side) / side.Dot(side) : 0;
                    return (p + (Math.Clamp(part, 0, 1) * side)).ChordTo(at);
                }
            )
            .Min();
}
