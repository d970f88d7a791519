using System.Collections.Immutable;
using PlankFit.Nesting.Model;

namespace PlankFit.Nesting.Rows;

/// <summary>All that may be laid in one kind of strip, every pose by itself, and what it is worth; the dearest for its length first.</summary>
internal sealed class RowPoses
{
    public RowPoses(NestProblem problem, Share share, int kind, double[] worths)
    {
        Ends = problem.Ends;
        AnyOrder = problem.AnyOrder;
        int[] serving =
        [
            .. problem
                .Serving[kind]
                .Where(i => problem.Available(i, share) > 0 && problem.Worth(i, worths) > 0)
                .OrderByDescending(i => problem.Worth(i, worths) / Math.Max(1e-3, Ends.SizeMm(i)))
                .ThenBy(i => i),
        ];
        (int Item, int Pose)[] all =
        [
            .. serving.SelectMany(i => problem.Items[i].Poses.Select((_, p) => (i, p))),
        ];
        Items = [.. all.Select(a => a.Item)];
        Poses = [.. all.Select(a => a.Pose)];
        Worth = [.. Items.Select(i => problem.Worth(i, worths))];
        LengthMm = [.. all.Select(a => problem.Items[a.Item].Poses[a.Pose].Shape.LengthMm)];
        NextMm =
        [
            .. all.Select(a =>
            {
                ItemPose pose = problem.Items[a.Item].Poses[a.Pose];
                return pose.CentreMm + Ends.HalfMm(a.Item, pose.RightEnd);
            }),
        ];
        Parts = [.. Items.Select(i => problem.Items[i].Parts)];
        OnlyPart = [.. Parts.Select(p => p.Length == 1 ? p[0] : -1)];
        OfAll = [.. all.Select(a => Ends.PoseOf(a.Item, a.Pose))];
    }

    public EndTable Ends { get; }

    /// <summary>A row is as long in any order of its things.</summary>
    public bool AnyOrder { get; }

    public int Count => Items.Length;

    public int[] Items { get; }

    public int[] Poses { get; }

    public double[] Worth { get; }

    public double[] LengthMm { get; }

    /// <summary>From its least x to where the share of whatever follows begins, at the least.</summary>
    public double[] NextMm { get; }

    /// <summary>The one of those that lies in each; -1 where there are several.</summary>
    public int[] OnlyPart { get; }

    /// <summary>Which of all poses of all things each is.</summary>
    public int[] OfAll { get; }

    /// <summary>The items of single pieces that lie in each.</summary>
    public ImmutableArray<int>[] Parts { get; }

    public double PitchMm(int one, int next) =>
        Ends.PitchMm(Items[one], Poses[one], Items[next], Poses[next]);

    /// <summary>The same to each of all poses of all things.</summary>
    public double[] PitchesMm(int one) => Ends.PitchesMm(OfAll[one]);

    public bool IsShort(int pose) => Ends.Short?.IsShort(OfAll[pose]) == true;

    /// <inheritdoc cref="ShortPoses.ApartMm"/>
    public double ApartMm(int one, int other) =>
        Ends.Short?.ApartMm(OfAll[one], OfAll[other]) ?? double.NegativeInfinity;
}
