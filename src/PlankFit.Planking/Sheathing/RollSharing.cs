using System.Collections.Immutable;
using System.Numerics;

namespace PlankFit.Planking.Sheathing;

/// <summary>What is cut off a roll in one go, and how many pieces are in it.</summary>
public readonly record struct RollPart(double LengthMm, int Pieces);

/// <summary>What comes off one roll.</summary>
/// <param name="Roll">Null for what no roll is left for.</param>
/// <param name="Parts">By their places in what was asked.</param>
public sealed record RollShare(ClothRoll? Roll, bool OnHand, ImmutableArray<int> Parts);

/// <summary>
/// Stretches of cloth out of rolls on hand and rolls to buy: as few pieces as may be without a roll, then what costs least (by their lengths where no price is given), then
/// as little as may be off bought rolls, then as few rolls as may be. Of so few stretches as a bottom has every way is looked at, by subsets; of more the longest goes
/// first, each roll filled as it comes.
/// </summary>
public static class RollSharing
{
    /// <summary>Stretches of which all ways are looked at.</summary>
    public const int MostExact = 11;

    private const double HairMm = 1e-6;

    /// <returns>One for each roll that is used, those on hand first, and one without a roll for what is left, if anything is.</returns>
    public static RollShare[] Of(IReadOnlyList<ClothRoll> rolls, IReadOnlyList<RollPart> parts) =>
        parts.Count == 0 ? []
        : parts.Count <= MostExact ? new BySubsets(rolls, parts).Best()
        : InOrder(rolls, parts);

    /// <summary>Rolls on hand, the shortest first, then as many as may be wanted of that which is cheapest by its length.</summary>
    internal static IEnumerable<(ClothRoll Roll, bool OnHand)> InTurn(
        IReadOnlyList<ClothRoll> rolls,
        int most
    )
    {
        foreach (ClothRoll roll in rolls.Where(r => r.Count is not null).OrderBy(r => r.LengthMm))
        {
            for (int i = 0; i < Math.Min(roll.Count!.Value, most); i++)
            {
                yield return (roll, true);
            }
        }

        ClothRoll? bought = rolls
            .Where(r => r.Count is null)
            .OrderBy(r => (r.Price ?? 0) / r.LengthMm)
            .ThenByDescending(r => r.LengthMm)
            .FirstOrDefault();
        for (int i = 0; i < most && bought is not null; i++)
        {
            yield return (bought, false);
        }
    }

    private static RollShare[] InOrder(
        IReadOnlyList<ClothRoll> rolls,
        IReadOnlyList<RollPart> parts
    )
    {
        List<int> left =
        [
            .. Enumerable.Range(0, parts.Count).OrderByDescending(i => parts[i].LengthMm),
        ];
        List<RollShare> shares = [];
        foreach ((ClothRoll roll, bool onHand) in InTurn(rolls, parts.Count))
        {
            double room = roll.LengthMm + HairMm;
            List<int> has = [];
            foreach (int i in left)
            {
                if (parts[i].LengthMm <= room)
                {
                    has.Add(i);
                    room -= parts[i].LengthMm;
                }
            }

            if (has.Count > 0)
            {
                left.RemoveAll(has.Contains);
                shares.Add(new(roll, onHand, [.. has]));
            }
        }

        return left.Count == 0 ? [.. shares] : [.. shares, new(null, false, [.. left])];
    }

    /// <summary>All ways, each set of stretches once: those that rolls on hand hold, roll by roll, and what bought ones cost for the rest.</summary>
    private sealed class BySubsets
    {
        private readonly IReadOnlyList<RollPart> parts;
        private readonly ClothRoll[] onHand;
        private readonly ClothRoll[] toBuy;
        private readonly double[] lengths;
        private readonly int[] pieces;
        private readonly int all;

        public BySubsets(IReadOnlyList<ClothRoll> rolls, IReadOnlyList<RollPart> of)
        {
            parts = of;
            all = (1 << of.Count) - 1;
            lengths = new double[all + 1];
            pieces = new int[all + 1];
            for (int set = 1; set <= all; set++)
            {
                int last = BitOperations.TrailingZeroCount(set),
                    rest = set & (set - 1);
                lengths[set] = lengths[rest] + of[last].LengthMm;
                pieces[set] = pieces[rest] + of[last].Pieces;
            }

            onHand =
            [
                .. rolls
                    .Where(r => r.Count is not null)
                    .OrderBy(r => r.LengthMm)
                    .SelectMany(r => Enumerable.Repeat(r, Math.Min(r.Count!.Value, of.Count))),
            ];
            toBuy = [.. rolls.Where(r => r.Count is null)];
        }

        public RollShare[] Best()
        {
            // What comes off bought rolls at the least cost, and as few of them as may be; and of it the set that the last of them holds.
            (double Cost, int Rolls)[] bought = new (double, int)[all + 1];
            (int Set, int Roll)[] lastBought = new (int, int)[all + 1];
            for (int set = 1; set <= all; set++)
            {
                bought[set] = (double.PositiveInfinity, int.MaxValue);
                // The first of the set lies on one of them: each way is looked at once.
                int first = set & -set;
                for (int some = set; some > 0; some = (some - 1) & set)
                {
                    if ((some & first) == 0)
                    {
                        continue;
                    }

                    (double Cost, int Rolls) rest = bought[set ^ some];
                    for (int r = 0; r < toBuy.Length; r++)
                    {
                        (double, int) now = (rest.Cost + Cost(toBuy[r]), rest.Rolls + 1);
                        if (Fits(some, toBuy[r]) && Less(now, bought[set]))
                        {
                            (bought[set], lastBought[set]) = (now, (some, r));
                        }
                    }
                }
            }

            // How few rolls on hand hold a set; and of it what the last of them holds.
            int[] held = [.. Enumerable.Repeat(int.MaxValue, all + 1)];
            held[0] = 0;
            List<int[]> lastHeld = [];
            foreach (ClothRoll roll in onHand)
            {
                int[] before = [.. held],
                    of = new int[all + 1];
                for (int set = 1; set <= all; set++)
                {
                    for (int some = set; some > 0; some = (some - 1) & set)
                    {
                        if (
                            before[set ^ some] != int.MaxValue
                            && before[set ^ some] + 1 < held[set]
                            && Fits(some, roll)
                        )
                        {
                            (held[set], of[set]) = (before[set ^ some] + 1, some);
                        }
                    }
                }

                lastHeld.Add(of);
            }

            return Told(Chosen(held, bought), lastHeld, lastBought);
        }

        private (int Held, int Bought) Chosen(int[] held, (double Cost, int Rolls)[] bought)
        {
            (int Held, int Bought) best = (0, 0);
            (int Left, double Cost, double Length, int Rolls)? least = null;
            for (int hand = 0; hand <= all; hand++)
            {
                if (held[hand] == int.MaxValue)
                {
                    continue;
                }

                int rest = all ^ hand;
                for (int buy = rest; ; buy = (buy - 1) & rest)
                {
                    if (buy == 0 || !double.IsInfinity(bought[buy].Cost))
                    {
                        (int, double, double, int) now = (
                            pieces[rest ^ buy],
                            bought[buy].Cost,
                            lengths[buy],
                            held[hand] + bought[buy].Rolls
                        );
                        if (least is not { } was || Before(now, was))
                        {
                            (least, best) = (now, (hand, buy));
                        }
                    }

                    if (buy == 0)
                    {
                        break;
                    }
                }
            }

            return best;
        }

        private RollShare[] Told(
            (int Held, int Bought) chosen,
            List<int[]> lastHeld,
            (int Set, int Roll)[] lastBought
        )
        {
            List<RollShare> shares = [];
            int set = chosen.Held;
            for (int r = onHand.Length - 1; r >= 0; r--)
            {
                // Nothing new was held with this one where the set was held as well before it.
                if (set != 0 && lastHeld[r][set] is > 0 and var some)
                {
                    shares.Insert(0, new(onHand[r], true, Of(some)));
                    set ^= some;
                }
            }

            for (int rest = chosen.Bought; rest != 0; )
            {
                (int some, int roll) = lastBought[rest];
                shares.Add(new(toBuy[roll], false, Of(some)));
                rest ^= some;
            }

            int left = all ^ chosen.Held ^ chosen.Bought;
            return left == 0 ? [.. shares] : [.. shares, new(null, false, Of(left))];
        }

        private ImmutableArray<int> Of(int set) =>
            [.. Enumerable.Range(0, parts.Count).Where(i => (set >> i & 1) == 1)];

        private bool Fits(int set, ClothRoll roll) => lengths[set] <= roll.LengthMm + HairMm;

        /// <summary>By prices where all that may be bought have one.</summary>
        private double Cost(ClothRoll roll) =>
            toBuy.All(r => r.Price is not null) ? roll.Price!.Value : roll.LengthMm;

        private static bool Less((double Cost, int Rolls) a, (double Cost, int Rolls) b) =>
            a.Cost < b.Cost - 1e-9 || (a.Cost <= b.Cost + 1e-9 && a.Rolls < b.Rolls);

        private static bool Before(
            (int Left, double Cost, double Length, int Rolls) a,
            (int Left, double Cost, double Length, int Rolls) b
        ) =>
            a.Left != b.Left ? a.Left < b.Left
            : Math.Abs(a.Cost - b.Cost) > 1e-9 ? a.Cost < b.Cost
            : Math.Abs(a.Length - b.Length) > HairMm ? a.Length < b.Length
            : a.Rolls < b.Rolls;
    }
}
