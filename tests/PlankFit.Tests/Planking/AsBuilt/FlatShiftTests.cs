using System.Reflection;
using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>The motion that lays one set of points on another: a turn and a move by chance are found again. The type is Planking's own, so it is called by reflection.</summary>
public sealed class FlatShiftTests
{
    private static readonly Type Shift = typeof(Job).Assembly.GetType(
        "PlankFit.Planking.Planks.FlatShift",
        throwOnError: true
    )!;

    private static readonly Gen<Vec2> Point = Gen.Select(
        Gen.Double[-2000, 2000],
        Gen.Double[-90, 90],
        (s, n) => new Vec2(s, n)
    );

    [Fact]
    public void ATurnAndAMoveAreFoundAgain() =>
        Gen.Select(Point.Array[2, 4], Gen.Double[-3.1, 3.1], Point)
            .Where(t => t.Item1[0].ChordTo(t.Item1[1]) > 1 && t.Item3.ChordTo(default) > 10)
            .Sample(
                (from, angle, by) =>
                {
                    Vec2 Moved(Vec2 p) =>
                        new Vec2(
                            (Math.Cos(angle) * p.X) - (Math.Sin(angle) * p.Y),
                            (Math.Sin(angle) * p.X) + (Math.Cos(angle) * p.Y)
                        ) + by;
                    object shift = Between(from, [.. from.Select(Moved)]);
                    Vec2 other = new(17, -5);
                    Assert.Equal(0, Call(shift, "To", other).ChordTo(Moved(other)), 1e-6);
                    Assert.Equal(0, Call(shift, "Back", Moved(other)).ChordTo(other), 1e-6);
                },
                iter: 100
            );

    /// <summary>A plank that stretches in no direction: longer by 2 mm evenly it is laid with 1 mm at either end.</summary>
    [Fact]
    public void WhatIsTooLongIsSharedByBothEnds()
    {
        object shift = Between([new(0, 0), new(1000, 0)], [new(5, 3), new(5, 1005)]);
        Assert.Equal(0, Call(shift, "To", new(0, 0)).ChordTo(new(5, 4)), 1e-9);
        Assert.Equal(0, Call(shift, "To", new(1000, 0)).ChordTo(new(5, 1004)), 1e-9);
    }

    /// <summary>Points that all fall on one say nothing of a turn: it is moved and not turned.</summary>
    [Fact]
    public void PointsOnOnePlaceMoveWithoutATurn()
    {
        object shift = Between([new(-10, 0), new(10, 0)], [new(40, 7), new(40, 7)]);
        Assert.Equal(0, Call(shift, "To", new(3, 2)).ChordTo(new(43, 9)), 1e-9);
    }

    private static object Between(Vec2[] from, Vec2[] to) =>
        Shift
            .GetMethod("Between", BindingFlags.Public | BindingFlags.Static)!
            .Invoke(null, [from, to])!;

    private static Vec2 Call(object shift, string name, Vec2 at) =>
        (Vec2)Shift.GetMethod(name)!.Invoke(shift, [at])!;
}
