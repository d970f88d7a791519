using System.Collections.Immutable;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>
/// What one strip of a cut sheet shows. A board of a few lanes has one strip. A sheet of many has one that shows it whole with its rips, and then its lanes a few
/// at a time, larger, each strip with the cuts and pieces that are its own.
/// </summary>
/// <param name="LowMm">Across the grain in the frame of the board, to <paramref name="HighMm"/>.</param>
/// <param name="Cuts">Those that are numbered in it.</param>
/// <param name="Places">Of the pieces in its table; none where the strip shows the rips only.</param>
/// <param name="FromLane">The first lane shown, from 0, up to but without <paramref name="ToLane"/>.</param>
public sealed record StripView(
    BoardCutList List,
    double LowMm,
    double HighMm,
    ImmutableArray<SawCut> Cuts,
    ImmutableArray<PiecePlace> Places,
    int FromLane,
    int ToLane
)
{
    /// <summary>So many lanes, their strip and their cuts, are room enough for a page.</summary>
    private const int MostLanes = BoardCuts.LanesTogether;

    /// <summary>The board as it comes to the saw, with its marked edge.</summary>
    public bool IsWhole => ToLane - FromLane == List.Lanes.Length;

    /// <summary>Rips and nothing else; the lanes follow.</summary>
    public bool IsOverview => Places.IsEmpty;

    public double HeightMm => HighMm - LowMm;

    public IEnumerable<SawnLane> Lanes => List.Lanes.Take(ToLane).Skip(FromLane);

    /// <summary>Those in its lanes, in the order of the board's.</summary>
    public IEnumerable<LaidPiece> Pieces
    {
        get
        {
            HashSet<PieceId> ids = [.. Lanes.SelectMany(l => l.PieceIds)];
            return List.Board.Pieces.Where(p => ids.Contains(p.Piece.Id));
        }
    }

    /// <summary>A place of the board, from where its strip begins and from the strip's lower edge, mm.</summary>
    public Vec2 From(Vec2 inFrame) => new(inFrame.X, inFrame.Y - LowMm);

    public static ImmutableArray<StripView> Of(BoardCutList list)
    {
        int lanes = list.Lanes.Length,
            strips = (lanes + MostLanes - 1) / MostLanes;
        var whole = new StripView(list, 0, list.Frame.WidthMm, list.Cuts, list.Places, 0, lanes);
        return strips <= 1
            ? [whole]
            :
            [
                whole with
                {
                    Cuts = [.. list.Cuts.Where(c => c.Lane is null)],
                    Places = [],
                },
                .. Enumerable
                    .Range(0, strips)
                    .Select(i => Some(list, lanes * i / strips, lanes * (i + 1) / strips)),
            ];
    }

    private static StripView Some(BoardCutList list, int from, int to) =>
        new(
            list,
            list.Lanes[from].LowMm,
            list.Lanes[to - 1].HighMm,
            [.. list.Cuts.Where(c => c.Lane >= from && c.Lane < to)],
            [.. list.Places.Where(p => p.Lane >= from && p.Lane < to)],
            from,
            to
        );
}
