using System.Buffers.Binary;
using System.Collections.Immutable;
using CsCheck;
using PlankFit.Export.Solids;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Solids;

/// <summary>Planks as bodies: closed, the right way out, of the right size and in the right place.</summary>
public sealed class PlankSolidTests
{
    private static readonly BottomPlan Launch = DemoPlans.Of("survey-launch");

    private static readonly ImmutableArray<PlankSolid> Solids = PlanSolids.Of(Launch);

    /// <summary>
    /// By the divergence theorem a closed body's volume is a third of the sum of P · n over its faces; that of a plank is its flat area by its thickness, but for what its bevels
    /// and a face bent over its middle come to: nothing on the whole, since one face gains what the other loses.
    /// </summary>
    [Theory]
    [InlineData("survey-launch")]
    [InlineData("tender")]
    [InlineData("pilot-skiff")]
    public void EveryBodyHoldsThePlanksWood(string hull) => HoldTheirWood(DemoPlans.Of(hull));

    /// <summary>The same of hulls by chance, planked with whatever may be asked.</summary>
    [Fact]
    public void BodiesOfHullsByChanceHoldTheirWood() =>
        RandomBackbone.Any.Sample(
            job =>
            {
                if (BottomPlanner.Plan(job).Plan is { } plan)
                {
                    HoldTheirWood(plan);
                }
            },
            iter: LongRuns.Of(2, 120)
        );

    private static void HoldTheirWood(BottomPlan plan)
    {
        foreach (PlankSolid solid in PlanSolids.Of(plan))
        {
            Plank plank = plan.Find(solid.Id)!;
            double thick = plan.LayerOf(solid.Id).Spec.ThicknessMm,
                flat = plank.AreaMm2 * thick,
                volume = Volume(solid);
            // Edges are thinned by 0.3 mm, which counts most on a sliver; one of no length between bevelled ends is a wedge as long and wide as it is thick.
            double thinned =
                PlanSolids.ForLooking * 2 * (plank.NetLengthMm + plank.WidestMm) * thick;
            Assert.True(
                Math.Abs(volume - flat) < (0.02 * flat) + thinned + Math.Pow(thick, 3),
                $"{solid.Id}: {volume:0} mm³ for {flat:0} mm³"
            );
        }
    }

    /// <summary>Outer and inner vertices are a thickness apart, square to the plank, but at bevelled ends.</summary>
    [Fact]
    public void FacesAreAThicknessApart() =>
        Assert.All(
            Solids,
            s =>
            {
                double thick = Launch.LayerOf(s.Id).Spec.ThicknessMm;
                for (int i = 0; i < s.Outer.Length; i++)
                {
                    Assert.InRange(
                        (s.Outer[i] - s.Inner[i]).Dot(s.Normals[i]),
                        0.98 * thick,
                        1.02 * thick
                    );
                }
            }
        );

    /// <summary>To port the bodies are the mirror images of those to starboard where the planks are.</summary>
    [Fact]
    public void PortIsTheMirrorImage()
    {
        PlankSolid star = Solids.Single(s => s.Id.ToString() == "S2-12"),
            port = Solids.Single(s => s.Id.ToString() == "P2-12");
        Assert.Equal(star.Outer.Length, port.Outer.Length);
        Assert.All(
            star.Outer,
            p => Assert.True(port.Outer.Min(q => q.ChordTo(p.MirroredInY())) < 1e-6)
        );
    }

    /// <summary>No vertex that was left out lies further off the body's edge than was asked for.</summary>
    [Theory]
    [InlineData(0)]
    // What stays first lies behind vertices that must be kept as well: the line goes round past its beginning.
    [InlineData(11)]
    public void WhatIsLeftOutLiesWithinTheTolerance(int first)
    {
        foreach (PlankSolid solid in Solids.Where(s => s.Id.Side == Side.Starboard))
        {
            Plank plank = Launch.Find(solid.Id)!;
            ImmutableArray<int> kept = SpaceThinning.Closed(
                plank.Outline,
                i => i % 20 == first,
                0.3
            );
            for (int i = 0; i < plank.Outline.Length; i++)
            {
                double off = kept.Select(
                        (k, n) =>
                            SegmentMm(
                                plank.Outline[i],
                                plank.Outline[k],
                                plank.Outline[kept[(n + 1) % kept.Length]]
                            )
                    )
                    .Min();
                Assert.InRange(off, 0, 0.3 + 1e-9);
            }
        }
    }

    /// <summary>The triangles of a polygon add up to it, whatever it is like and whichever way round.</summary>
    [Fact]
    public void EarsAddUpToThePolygon() =>
        Gen.Double[1, 50]
            .Array[3, 40]
            .Select(Gen.Bool)
            .Sample(
                (radii, turned) =>
                {
                    Vec2[] star =
                    [
                        .. radii.Select(
                            (r, i) =>
                            {
                                double a = 2 * Math.PI * i / radii.Length;
                                return new Vec2(r * Math.Cos(a), r * Math.Sin(a));
                            }
                        ),
                    ];
                    Vec2[] ring = turned ? [.. star.Reverse()] : star;
                    ImmutableArray<(int A, int B, int C)> ears = EarClipping.Of(ring);
                    Assert.Equal(ring.Length - 2, ears.Length);
                    double whole = FlatPolygon.Area(ring);
                    double[] areas =
                    [
                        .. ears.Select(t => FlatPolygon.Area([ring[t.A], ring[t.B], ring[t.C]])),
                    ];
                    Assert.Equal(whole, areas.Sum(), 1e-9 * Math.Abs(whole));
                    Assert.All(areas, a => Assert.True(a * whole >= 0));
                },
                iter: LongRuns.Of(200, 20000)
            );

    /// <summary>Read back by the words of the format, every vertex is where it was to a part in 65535 of the box, and triangles and lines name vertices of their plank.</summary>
    [Fact]
    public void PackedBytesReadBack()
    {
        byte[] bytes = PackedSolids.Of(Solids);
        Assert.Equal("PFS1"u8.ToArray(), bytes[..4]);
        int Int(int at) => BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(at));
        int planks = Int(4),
            vertices = Int(8),
            triangles = Int(12),
            lines = Int(16);
        Assert.Equal(Solids.Length, planks);
        Assert.Equal(44 + (8 * planks) + (12 * vertices) + (4 * (triangles + lines)), bytes.Length);
        double[] box =
        [
            .. Enumerable
                .Range(0, 6)
                .Select(i =>
                    (double)BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(20 + (4 * i)))
                ),
        ];
        int at = 44 + (8 * planks),
            first = 0;
        foreach ((PlankSolid solid, int n) in Solids.Select((s, n) => (s, n)))
        {
            for (int i = 0; i < solid.Outer.Length; i++)
            {
                ReadOnlySpan<byte> v = bytes.AsSpan(at + (12 * (first + i)));
                double Along(int axis, ReadOnlySpan<byte> of) =>
                    box[axis]
                    + (
                        (box[axis + 3] - box[axis])
                        * BinaryPrimitives.ReadUInt16LittleEndian(of[(2 * axis)..])
                        / 65535
                    );
                Vec3 p = new(Along(0, v), Along(1, v), Along(2, v));
                Assert.InRange(p.ChordTo(solid.Outer[i]), 0, 0.12);
                Assert.Equal(n, BinaryPrimitives.ReadUInt16LittleEndian(v[6..]));
            }

            first += 6 * solid.Outer.Length;
        }

        Assert.Equal(vertices, first);
        int places = at + (12 * vertices);
        for (int i = 0; i < triangles + lines; i++)
        {
            Assert.InRange(Int(places + (4 * i)), 0, vertices - 1);
        }
    }

    /// <summary>Of the bottom seen from below every plank of the outer skin is drawn, under its name, within the sheet.</summary>
    [Fact]
    public void TheTurnedViewHasEveryPlankThatIsShown()
    {
        Drawing drawing = TurnedView.Of(
            "bottom",
            Solids,
            new(35, -30, false),
            (400, 250),
            id => id.Layer == 2
        );
        Assert.Equal(
            Solids
                .Where(s => s.Id.Layer == 2)
                .Select(s => s.Id.ToString())
                .Order(StringComparer.Ordinal),
            drawing.Shapes.Select(s => s.Layer).Distinct().Order(StringComparer.Ordinal)
        );
        Assert.All(
            drawing.Shapes.OfType<Polyline>().SelectMany(p => p.Points),
            p =>
            {
                Assert.InRange(p.X, 0, 400);
                Assert.InRange(p.Y, 0, 250);
            }
        );
    }

    /// <summary>Straight from abeam a point forward is to the right, and one higher is higher; keel up it is lower.</summary>
    [Fact]
    public void AxesAreAsTheyAreSaid()
    {
        PlankSolid fore = Solids.First(s => s.Id.ToString() == "S2-05"),
            aft = Solids.First(s => s.Id.ToString() == "S2-30");
        double X(string id, bool upside) =>
            TurnedView
                .Of("", [fore, aft], new(0, 0, upside), (400, 250), _ => true)
                .Shapes.OfType<Polyline>()
                .Where(p => p.Layer == id)
                .Average(p => p.Points.Average(q => q.X));
        Assert.True(X("S2-05", false) > X("S2-30", false));
        Assert.True(X("S2-05", true) < X("S2-30", true));
    }

    private static double Volume(PlankSolid s)
    {
        double six = 0;
        void Add(Vec3 a, Vec3 b, Vec3 c) => six += a.Dot(b.Cross(c));
        foreach ((int a, int b, int c) in s.Faces)
        {
            Add(s.Outer[a], s.Outer[b], s.Outer[c]);
            Add(s.Inner[a], s.Inner[c], s.Inner[b]);
        }

        for (int i = 0; i < s.Outer.Length; i++)
        {
            int j = (i + 1) % s.Outer.Length;
            Add(s.Outer[i], s.Inner[i], s.Outer[j]);
            Add(s.Outer[j], s.Inner[i], s.Inner[j]);
        }

        return six / 6;
    }

    private static double SegmentMm(Vec3 p, Vec3 a, Vec3 b)
    {
        Vec3 chord = b - a;
        double t =
            chord.NormSquared > 0 ? Math.Clamp((p - a).Dot(chord) / chord.NormSquared, 0, 1) : 0;
        return (p - a - (t * chord)).Norm;
    }
}
