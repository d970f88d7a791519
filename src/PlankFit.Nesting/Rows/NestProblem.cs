using System.Collections.Immutable;
using PlankFit.Nesting.Model;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// Things to be laid in rows, and boards to be ripped into lanes for them. A kind of strip is a class of lane in a sort of stock; what is asked of a kind is a row no
/// longer than the strip, of things no higher than the lane, that the sort serves.
/// </summary>
internal sealed class NestProblem
{
    private readonly ImmutableArray<ImmutableArray<double>> lengths;
    private readonly ImmutableArray<ImmutableArray<double>> bounded;
    private readonly bool[][] serves;

    public NestProblem(
        ImmutableArray<BoardType> boards,
        int sorts,
        EndTable ends,
        double kerfMm,
        double proudMm,
        ImmutableArray<int> instead
    )
    {
        Instead = instead;
        Boards = boards;
        Sorts = sorts;
        Ends = ends;
        KerfMm = kerfMm;
        ProudMm = proudMm;
        DearestBoard = boards.Max(b => b.Cost);
        CostsAreAsked = boards.All(b => b.Cost == b.Asked);
        Classes = LaneClass.Of(
            ends.Items.Where((_, i) => instead[i] < 0),
            boards
                .Where(b => !b.OnlyBounds)
                .SelectMany(b => b.Region.ClearWidths())
                .Select(w => w + proudMm),
            kerfMm
        );
        Lanes = [.. boards.Select(b => new BoardLanes(b, Classes, kerfMm, proudMm))];
        lengths =
        [
            .. Enumerable
                .Range(0, Kinds)
                .Select(k =>
                    Lanes
                        .Where(l => l.Board.Sort == SortOf(k) && !l.Board.OnlyBounds)
                        .SelectMany(l => l.StretchLengths(ClassOf(k)))
                        .Distinct()
                        .OrderDescending()
                        .ToImmutableArray()
                ),
        ];
        bounded =
        [
            .. Enumerable
                .Range(0, sorts)
                .Select(s =>
                    boards
                        .Where(b => b.OnlyBounds && b.Sort == s)
                        .Select(b => b.Region.LengthMm)
                        .Distinct()
                        .ToImmutableArray()
                ),
        ];
        Serving =
        [
            .. Enumerable
                .Range(0, Kinds)
                .Select(k =>
                    Enumerable
                        .Range(0, Items.Length)
                        .Where(i =>
                            instead[i] < 0
                            && Items[i].HeightMm <= Classes[ClassOf(k)].HeightMm
                            && Items[i].Sorts.Contains(SortOf(k))
                        )
                        .ToImmutableArray()
                ),
        ];
        serves =
        [
            .. Serving.Select(s =>
            {
                bool[] yes = new bool[Items.Length];
                foreach (int i in s)
                {
                    yes[i] = true;
                }

                return yes;
            }),
        ];
    }

    public ImmutableArray<BoardType> Boards { get; }

    /// <summary>By item, the block that is laid in its place, since it is not laid by itself; -1 where it is.</summary>
    public ImmutableArray<int> Instead { get; }

    public double DearestBoard { get; }

    /// <summary>Every thing lies one way only and asks the same of whatever comes next, as rectangles do: a row is as long in any order.</summary>
    public bool AnyOrder => anyOrder ??= IsAnyOrder();

    private bool? anyOrder;

    private bool IsAnyOrder()
    {
        const double SameMm = 1e-9;
        double Between(int i, int j) => Ends.PitchMm(i, 0, j, 0) - Items[i].Poses[0].Shape.LengthMm;
        int n = Items.Length;
        double gap = Between(0, 0);
        return Items.All(i => i.Poses.Length == 1)
            && Enumerable
                .Range(0, n)
                .All(i => Enumerable.Range(0, n).All(j => Math.Abs(Between(i, j) - gap) <= SameMm));
    }

    /// <summary>By kind, the one that stands in for it where rows are looked for.</summary>
    public ImmutableArray<int> Leads => leads ??= LeadKinds.Of(this);

    private ImmutableArray<int>? leads;

    public bool Serves(int kind, int item) => serves[kind][item];

    /// <summary>How many of an item there may be.</summary>
    public int Available(int item, Share share) =>
        Items[item].Parts.GroupBy(p => p).Min(same => share.Items[same.Key] / same.Count());

    /// <summary>Of an item, from the worths of its parts.</summary>
    public double Worth(int item, double[] worths) => Items[item].Parts.Sum(p => worths[p]);

    public int Sorts { get; }

    public EndTable Ends { get; }

    public double KerfMm { get; }

    public double ProudMm { get; }

    /// <summary>Every board costs just what the objective counts of it.</summary>
    public bool CostsAreAsked { get; }

    /// <summary>Lengths of the boards that are in the bound only.</summary>
    public ImmutableArray<double> BoundLengths(int kind) => bounded[SortOf(kind)];

    public ImmutableArray<LaneClass> Classes { get; }

    /// <summary>By board: the lanes that it can be ripped into.</summary>
    public ImmutableArray<BoardLanes> Lanes { get; }

    /// <summary>By kind, the items that may lie in it.</summary>
    public ImmutableArray<ImmutableArray<int>> Serving { get; }

    public ImmutableArray<NestItem> Items => Ends.Items;

    public int Kinds => Classes.Length * Sorts;

    public int Kind(int laneClass, int sort) => (laneClass * Sorts) + sort;

    public int ClassOf(int kind) => kind / Sorts;

    public int SortOf(int kind) => kind % Sorts;

    /// <summary>By kind, the lengths of strips that there are, longest first.</summary>
    public ImmutableArray<double> StripLengths(int kind) => lengths[kind];

    /// <summary>Which of a kind's lengths is the shortest that holds a row; -1 where none does.</summary>
    public int Bucket(int kind, double rowMm)
    {
        ImmutableArray<double> all = lengths[kind];
        int low = -1,
            high = all.Length;
        while (high - low > 1)
        {
            int mid = (low + high) / 2;
            (low, high) = all[mid] >= rowMm - FitsMm ? (mid, high) : (low, mid);
        }

        return low;
    }

    /// <summary>No strip of a kind, and none narrower than it in an uneven board, is longer.</summary>
    public double LongestMm(int kind) =>
        Boards
            .Where(b => b.Sort == SortOf(kind))
            .Select(b => b.Region.LengthMm)
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>The same of a kind and all that it stands in for: what is worked out for it must reach as far as any of them.</summary>
    public double LongestLedMm(int kind) =>
        Enumerable.Range(0, Kinds).Where(k => k == kind || Leads[k] == kind).Max(LongestMm);

    /// <summary>Which of a kind's lengths the boards of a share have.</summary>
    public ImmutableArray<int> Buckets(int kind, Share share)
    {
        bool[] there = new bool[lengths[kind].Length];
        foreach (BoardLanes lanes in Lanes.Where((_, b) => share.Boards[b] > 0))
        {
            if (lanes.Board.Sort == SortOf(kind))
            {
                foreach (double length in lanes.StretchLengths(ClassOf(kind)))
                {
                    there[Bucket(kind, length)] = true;
                }
            }
        }

        return [.. Enumerable.Range(0, there.Length).Where(j => there[j])];
    }

    /// <summary>A row may be longer than its strip by what a double loses in a sum, mm.</summary>
    private const double FitsMm = 1e-7;
}

/// <summary>How much of each item is asked for, and how many of each board may be used: all of the problem, or a part of it.</summary>
internal sealed record Share(ImmutableArray<int> Items, ImmutableArray<int> Boards)
{
    public static Share AllOf(NestProblem problem) =>
        new(
            [.. problem.Items.Select(i => i.Count)],
            [.. problem.Boards.Select(b => b.OnlyBounds ? 0 : b.Count)]
        );

    /// <summary>With the boards that are in the bound only.</summary>
    public Share Bounding(NestProblem problem) =>
        this with
        {
            Boards = [.. problem.Boards.Select((b, i) => b.OnlyBounds ? b.Count : Boards[i])],
        };
}
