using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;

namespace PlankFit.App.Marking;

/// <summary>The boards of the last plan of cutting, as nest.json has them beside the sheets that planks are sawn by.</summary>
internal static class PlannedBoards
{
    public const string File = "nest.json";

    /// <summary>Null where there is no plan of this job's in the folder, or it cannot be read.</summary>
    public static ImmutableArray<BoardSawnInto>? In(string folder, string job)
    {
        string path = Path.Combine(folder, File);
        try
        {
            if (!System.IO.File.Exists(path))
            {
                return null;
            }

            using var plan = JsonDocument.Parse(System.IO.File.ReadAllText(path));
            JsonElement root = plan.RootElement;
            return
                root.GetProperty("schema").GetString() == "plankfit-nest/1"
                && root.GetProperty("job").GetString() == job
                ? [.. root.GetProperty("boards").EnumerateArray().Select(Board)]
                : null;
        }
        catch (Exception e)
            when (e
                    is JsonException
                        or KeyNotFoundException
                        or InvalidOperationException
                        or FormatException
                        or IOException
                        or UnauthorizedAccessException
            )
        {
            return null;
        }
    }

    /// <summary>Those that planks were now sawn out of and the record has not: a plank in pieces comes out of several.</summary>
    public static IEnumerable<BoardSawnInto> Of(
        ImmutableArray<BoardSawnInto> plan,
        IReadOnlySet<PlankId> sawnNow,
        ImmutableArray<BoardSawnInto> record
    ) =>
        plan.Where(b =>
            b.Planks.Any(sawnNow.Contains)
            && !record.Any(r => r.Board == b.Board && r.Planks.Intersect(b.Planks).Any())
        );

    private static BoardSawnInto Board(JsonElement board)
    {
        double Mm(JsonElement of, string name) => of.GetProperty(name).GetDouble();
        return new(
            board.GetProperty("board").GetString()!,
            [
                .. board
                    .GetProperty("pieces")
                    .EnumerateArray()
                    .Select(p => Plank(p.GetProperty("id").GetString()!))
                    .Distinct(),
            ],
            [
                .. board
                    .GetProperty("offcuts")
                    .EnumerateArray()
                    .Select(o => new OffcutLeft(
                        o.GetProperty("id").GetString()!,
                        board.GetProperty("kind").GetString() == "sheet",
                        board.GetProperty("grainAcross").GetBoolean(),
                        Mm(o, "toMm") - Mm(o, "fromMm"),
                        Mm(o, "highMm") - Mm(o, "lowMm"),
                        Mm(board, "thicknessMm"),
                        board.GetProperty("species").GetString(),
                        board.GetProperty("grade").GetString()
                    )),
            ]
        )
        {
            ToBuy = !board.GetProperty("onHand").GetBoolean(),
        };
    }

    /// <summary>The plank of S1-07, or of S1-07a, a piece of it.</summary>
    private static PlankId Plank(string piece) =>
        PieceId.Parse(piece)?.Plank ?? throw new FormatException();
}
