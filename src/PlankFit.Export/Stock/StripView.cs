using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;

namespace PlankFit.Export.Stock;

/// <summary>
/// What one strip of a cut sheet shows: a board with all that is sawn in it; or a board whole with no more than its rips; or a few of its lanes, or a stretch of
/// them, with the cuts and pieces that are their own.
/// </summary>
/// <param name="FromMm">Along the grain in the frame of the board, to <paramref name="ToMm"/>.</param>
/// <param name="FromLane">The first lane shown, from 0, up to but without <paramref name="ToLane"/>.</param>
public sealed record StripView(
    BoardCutList List,
    double FromMm,
    double ToMm,
    int FromLane,
    int ToLane
)
{
    /// <summary>Of what lies beyond a stretch no less is shown than this part of it, so that an end is not at its very side.</summary>
    private const double Beyond = 0.05;

    /// <summary>An empty end that takes less than this part of a lane is shown with it.</summary>
    private const double Empty = 0.2;

    /// <summary>A cut is numbered in every stretch that holds this part of it.</summary>
    private const double PartOfCut = 0.25;

    /// <summary>The board as it comes to the saw, and all that is sawn in it.</summary>
    public static StripView Whole(BoardCutList list) =>
        new(list, 0, list.Frame.LengthMm, 0, list.Lanes.Length) { IsWhole = true };

    /// <summary>The board as it comes to the saw, its rips and nothing else; the lanes follow.</summary>
    public static StripView Overview(BoardCutList list) => Whole(list) with { IsOverview = true };

    /// <summary>Lanes by themselves when they are ripped, as far along as there is something to saw in them.</summary>
    public static StripView Ripped(BoardCutList list, int fromLane, int toLane)
    {
        double begin = list.LaneBeginsMm[fromLane..toLane].Min(),
            end = list.LaneEndsMm[fromLane..toLane].Max();
        var lanes = new StripView(list, begin, end, fromLane, toLane);
        double used = lanes
            .Pieces.SelectMany(p => list.Frame.Of(p))
            .Concat(lanes.Cuts.SelectMany(c => c.Line))
            .Select(p => p.X)
            .DefaultIfEmpty(end)
            .Max();
        return used - begin < (1 - Empty) * (end - begin)
            ? lanes with
            {
                ToMm = begin + ((1 + Beyond) * (used - begin)),
            }
            : lanes;
    }

    public bool IsWhole { get; private init; }

    public bool IsOverview { get; private init; }

    public double LengthMm => ToMm - FromMm;

    /// <summary>Where the first of its lanes begins when they are ripped.</summary>
    public double LanesBeginMm => List.LaneBeginsMm[FromLane..ToLane].Min();

    /// <summary>Where the longest of its lanes ends when they are ripped.</summary>
    public double LanesEndMm => List.LaneEndsMm[FromLane..ToLane].Max();

    /// <summary>Across the grain in the frame of the board, to <see cref="HighMm"/>.</summary>
    public double LowMm => IsWhole ? 0 : List.Lanes[FromLane].LowMm;

    public double HighMm => IsWhole ? List.Frame.WidthMm : List.Lanes[ToLane - 1].HighMm;

    public double HeightMm => HighMm - LowMm;

    public int LaneCount => ToLane - FromLane;

    public IEnumerable<SawnLane> Lanes => List.Lanes.Take(ToLane).Skip(FromLane);

    /// <summary>Those that are numbered in it.</summary>
    public ImmutableArray<SawCut> Cuts =>
        IsOverview ? [.. List.Cuts.Where(c => c.Lane is null)]
        : IsWhole ? List.Cuts
        : [.. List.Cuts.Where(c => c.Lane >= FromLane && c.Lane < ToLane && Holds(c))];

    /// <summary>Those that run through it, numbered or not.</summary>
    public IEnumerable<SawCut> Lines =>
        IsWhole ? Cuts : List.Cuts.Where(c => c.Lane >= FromLane && c.Lane < ToLane);

    /// <summary>Of the pieces in its table; none where it shows the rips only.</summary>
    public ImmutableArray<PiecePlace> Places =>
        IsOverview
            ? []
            :
            [
                .. List.Places.Where(p =>
                    p.Lane >= FromLane && p.Lane < ToLane && Shows(p.FromMm, p.ToMm)
                ),
            ];

    /// <summary>Those in its lanes, in the order of the board's.</summary>
    public IEnumerable<LaidPiece> Pieces
    {
        get
        {
            HashSet<PieceId> ids =
            [
                .. List
                    .Places.Where(p =>
                        p.Lane >= FromLane && p.Lane < ToLane && Shows(p.FromMm, p.ToMm)
                    )
                    .Select(p => p.PieceId),
            ];
            return List.Board.Pieces.Where(p => ids.Contains(p.Piece.Id));
        }
    }

    /// <summary>Half of its lanes, and the others.</summary>
    public ImmutableArray<StripView> Fewer()
    {
        int middle = FromLane + (LaneCount / 2);
        return Shown(Only(FromLane, middle), Only(middle, ToLane));
    }

    /// <summary>In two along its lanes, where the fewest cuts are parted.</summary>
    public ImmutableArray<StripView> Shorter()
    {
        const int Tries = 21;
        double third = LengthMm / 3,
            clear = Beyond * third;
        double at = Enumerable
            .Range(0, Tries)
            .Select(i => FromMm + third + (third * i / (Tries - 1)))
            .MinBy(x =>
                (
                    Lines.Count(c =>
                        Math.Min(c.From.X, c.To.X) - clear < x
                        && Math.Max(c.From.X, c.To.X) + clear > x
                    ),
                    Math.Abs(x - ((FromMm + ToMm) / 2))
                )
            );
        return Shown(this with { ToMm = at }, this with { FromMm = at });
    }

    private StripView Only(int fromLane, int toLane)
    {
        StripView lanes = Ripped(List, fromLane, toLane);
        return lanes with
        {
            FromMm = Math.Max(FromMm, lanes.FromMm),
            ToMm = Math.Min(ToMm, lanes.ToMm),
        };
    }

    /// <summary>Those in which something is sawn.</summary>
    private static ImmutableArray<StripView> Shown(params StripView[] views) =>
        [.. views.Where(v => v.LengthMm > 0 && (v.Cuts.Any() || v.Places.Any()))];

    private bool Holds(SawCut cut)
    {
        double low = Math.Min(cut.From.X, cut.To.X),
            high = Math.Max(cut.From.X, cut.To.X),
            shown = Math.Min(high, ToMm) - Math.Max(low, FromMm);
        return (cut.MiddleMm >= FromMm && cut.MiddleMm < ToMm)
            || (shown > 0 && shown >= PartOfCut * (high - low))
            || (cut.MiddleMm < LanesBeginMm && FromMm <= LanesBeginMm)
            || (cut.MiddleMm >= LanesEndMm && ToMm >= LanesEndMm);
    }

    private bool Shows(double fromMm, double toMm) =>
        IsWhole || (Math.Min(toMm, ToMm) - Math.Max(fromMm, FromMm) > Beyond * (toMm - fromMm));
}
