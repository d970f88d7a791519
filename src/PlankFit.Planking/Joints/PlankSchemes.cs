using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>A plank as the search for its joints sees it.</summary>
/// <param name="Places">Where it may be jointed, from inboard.</param>
/// <param name="FromMm">Where the shape to saw begins along the plank's own line; <paramref name="ToMm"/> where it ends.</param>
/// <param name="IsDivided">Whether it is to be divided; else it stays whole, whatever its length.</param>
public sealed record PlankRoom(
    ImmutableArray<JointPlace> Places,
    double FromMm,
    double ToMm,
    bool IsDivided
)
{
    public static readonly PlankRoom Whole = new([], 0, 0, false);
}

/// <summary>The ways in which one plank can be divided at given places so that no piece is longer or shorter than the stock allows.</summary>
public static class PlankSchemes
{
    /// <summary>A plank is never cut into more pieces than the letters have names for, less one.</summary>
    public const int MostJoints = 24;

    private const double NoiseMm = 1e-6;

    /// <summary>The fewest joints that the length and the places allow; null where none do.</summary>
    public static int? LeastJoints(PlankRoom room, JointStock stock)
    {
        ImmutableArray<JointPlace> places = room.Places;
        // Joints up to and with each place; 0 where no row of pieces comes to it.
        int[] upTo = new int[places.Length];
        int? least = null;
        for (int p = 0; p < places.Length; p++)
        {
            upTo[p] = Fits(places[p].FarMm - room.FromMm, stock) ? 1 : 0;
            for (int q = 0; q < p && upTo[p] != 1; q++)
            {
                if (
                    upTo[q] > 0
                    && (upTo[p] == 0 || upTo[q] + 1 < upTo[p])
                    && Fits(places[p].FarMm - places[q].NearMm, stock)
                )
                {
                    upTo[p] = upTo[q] + 1;
                }
            }

            if (
                upTo[p] > 0
                && upTo[p] <= MostJoints
                && !(upTo[p] >= least)
                && Fits(room.ToMm - places[p].NearMm, stock)
            )
            {
                least = upTo[p];
            }
        }

        return least;
    }

    /// <summary>
    /// Every way with so many joints in which no joint can be left out, those at lesser s first. A way with a joint to spare is never needed: without it the
    /// plank has a piece less, and rules speak of joints that are there.
    /// </summary>
    public static IEnumerable<JointScheme> Of(PlankRoom room, JointStock stock, int joints)
    {
        ImmutableArray<JointPlace> places = room.Places;
        bool[][] ends = Ends(room, stock, joints);
        return Further([], 0);

        IEnumerable<JointScheme> Further(ImmutableArray<JointPlace> taken, int first)
        {
            double start = Start(taken, 1);
            if (taken.Length == joints)
            {
                return Needed(taken, room.ToMm) ? [Way(room, taken, stock)] : [];
            }

            return Enumerable
                .Range(first, places.Length - first)
                .Where(k =>
                    ends[joints - taken.Length - 1][k]
                    && (taken.IsEmpty || !Fits(room.ToMm - start, stock))
                    && Fits(places[k].FarMm - start, stock)
                    && Needed(taken, places[k].FarMm)
                )
                .SelectMany(k => Further(taken.Add(places[k]), k + 1));
        }

        // Whether the last joint taken is needed where the next piece ends at a place.
        bool Needed(ImmutableArray<JointPlace> taken, double far) =>
            taken.IsEmpty || !Fits(far - Start(taken, 2), stock);

        double Start(ImmutableArray<JointPlace> taken, int back) =>
            taken.Length < back ? room.FromMm : taken[^back].NearMm;
    }

    /// <summary>A plank divided at given places, none for one that stays whole.</summary>
    internal static JointScheme Way(
        PlankRoom room,
        ImmutableArray<JointPlace> joints,
        JointStock stock
    ) =>
        joints.IsEmpty
            ? JointScheme.Whole
            : new(joints, Waste(Lengths(joints, room.FromMm, room.ToMm), stock));

    /// <summary>For so many joints more, from none on: from which places the plank's end is reached.</summary>
    private static bool[][] Ends(PlankRoom room, JointStock stock, int joints)
    {
        ImmutableArray<JointPlace> places = room.Places;
        bool[][] ends = new bool[Math.Max(1, joints)][];
        ends[0] = [.. places.Select(p => Fits(room.ToMm - p.NearMm, stock))];
        for (int more = 1; more < joints; more++)
        {
            bool[] last = ends[more - 1],
                here = ends[more] = new bool[places.Length];
            for (int p = 0; p < places.Length; p++)
            {
                for (int q = p + 1; q < places.Length && !here[p]; q++)
                {
                    here[p] = last[q] && Fits(places[q].FarMm - places[p].NearMm, stock);
                }
            }
        }

        return ends;
    }

    internal static bool Fits(double length, JointStock stock) =>
        length >= stock.ShortestMm - NoiseMm && length <= stock.LongestMm + NoiseMm;

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

        return lengths.Sum(l => stock.StockLengthsMm.FirstOrDefault(s => s >= l - NoiseMm, l) - l);
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
