using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>The ways in which one plank can be divided at given places so that no piece is longer or shorter than the stock allows.</summary>
public static class PlankWays
{
    /// <summary>With more joints than one the places are thinned to so many, evenly, or their combinations run away.</summary>
    private const int MostPlacesOfMany = 24;

    /// <summary>A plank is never cut into more pieces than this.</summary>
    public const int MostJoints = 5;

    /// <summary>All ways with so many joints, those at lesser s first.</summary>
    /// <param name="from">Where the shape to saw begins along the plank's own line; <paramref name="to"/> where it ends.</param>
    public static IEnumerable<JointWay> Of(
        ImmutableArray<JointPlace> places,
        double from,
        double to,
        JointStock stock,
        int joints
    )
    {
        ImmutableArray<JointPlace> used = joints > 1 ? Thinned(places, MostPlacesOfMany) : places;
        return Further([], 0);

        IEnumerable<JointWay> Further(ImmutableArray<JointPlace> taken, int first)
        {
            double start = taken.IsEmpty ? from : taken[^1].NearMm;
            if (taken.Length == joints)
            {
                return Fits(to - start) ? [new(taken, Waste(Lengths(taken, from, to), stock))] : [];
            }

            return Enumerable
                .Range(first, used.Length - first)
                .Where(k => Fits(used[k].FarMm - start))
                .SelectMany(k => Further(taken.Add(used[k]), k + 1));
        }

        bool Fits(double length) =>
            length >= stock.ShortestMm - 1e-6 && length <= stock.LongestMm + 1e-6;
    }

    /// <summary>Overall lengths of the pieces from inboard, mm.</summary>
    public static ImmutableArray<double> Lengths(
        ImmutableArray<JointPlace> joints,
        double from,
        double to
    ) =>
        [
            .. Enumerable
                .Range(0, joints.Length + 1)
                .Select(i =>
                    (i == joints.Length ? to : joints[i].FarMm)
                    - (i == 0 ? from : joints[i - 1].NearMm)
                ),
        ];

    /// <summary>
    /// What is left over of the shortest stock length that holds each piece; where no lengths are known, how far the pieces are from even, both mm.
    /// </summary>
    public static double Waste(ImmutableArray<double> lengths, JointStock stock)
    {
        if (stock.StockLengthsMm.IsEmpty)
        {
            double mean = lengths.Average();
            return lengths.Sum(l => Math.Abs(l - mean));
        }

        return lengths.Sum(l => stock.StockLengthsMm.FirstOrDefault(s => s >= l - 1e-6, l) - l);
    }

    /// <summary>So many of a list at the most, evenly spread over it.</summary>
    internal static ImmutableArray<T> Thinned<T>(ImmutableArray<T> all, int most) =>
        all.Length <= most
            ? all
            :
            [
                .. Enumerable
                    .Range(0, most)
                    .Select(k => all[(int)((long)k * (all.Length - 1) / (most - 1))]),
            ];
}
