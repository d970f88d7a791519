using System.Text.Json;
using PlankFit.Export.Tables;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>The plan of cutting as data, nest.json, schema plankfit-nest/1.</summary>
public static class NestJson
{
    public const string Schema = "plankfit-nest/1";

    /// <summary>Writes the plan. The stream is left open.</summary>
    /// <exception cref="ArgumentException">The planks are not laid out in any stock.</exception>
    public static void Write(BottomPlan plan, Stream stream)
    {
        NestPlan nest =
            plan.Nest ?? throw new ArgumentException("nothing is laid out", nameof(plan));
        var use = StockUse.Of(nest);
        JsonFile.Write(
            (Schema, plan.Job),
            angles: false,
            stream,
            (json, numbers) =>
            {
                json.WriteStartArray("boards");
                foreach (SawnBoard board in nest.Boards)
                {
                    Board(json, numbers, nest, board);
                }

                json.WriteEndArray();
                json.Strings("unplaced", nest.Unplaced.Select(piece => piece.Piece.Id.ToString()));
                json.Strings("unplacedWhy", nest.Unplaced.Select(piece => piece.Why));
                json.Objects(
                    "missing",
                    nest.Short,
                    missing =>
                    {
                        json.WriteNumber("pieces", missing.PieceIds.Length);
                        json.WriteNumber("boards", missing.Boards);
                        numbers.Number("lengthMm", missing.LengthMm, 4);
                        numbers.Number("widthMm", missing.WidthMm, 4);
                        numbers.Number("thicknessMm", missing.ThicknessMm, 4);
                        json.WriteString("species", missing.Species);
                        json.WriteString("grade", missing.LeastGrade);
                    }
                );
                numbers.Number("kerfMm", nest.Spec.KerfMm, 4);
                numbers.Area("usedMm2", use.PiecesMm2);
                numbers.Area("leftOverMm2", use.OffcutsMm2);
                numbers.Area("wastedMm2", use.WastedMm2);
                numbers.Area("stockMm2", use.BoardsMm2);
                numbers.Area("boughtMm2", use.BoughtMm2);
                if (use.Cost is { } cost)
                {
                    json.WriteNumber("cost", cost);
                }
                else
                {
                    json.WriteNull("cost");
                }

                json.WriteString("objective", NestWords.Measure(nest.Measure));
                numbers.Area("value", nest.Value);
                numbers.Area("lowerBound", nest.LowerBound);
                numbers.NumberOrNull(
                    "gapPercent",
                    nest.Unplaced.IsEmpty && double.IsFinite(nest.GapPercent)
                        ? nest.GapPercent
                        : null,
                    4
                );
                if (
                    nest.Unplaced.IsEmpty
                    && nest.Materials.All(m =>
                        m.SquareCutsFirstFit is not null || m.Measure != nest.Measure
                    )
                )
                {
                    numbers.Area(
                        "squareCuts",
                        nest.Materials.Where(m => m.Measure == nest.Measure)
                            .Sum(m => m.SquareCutsFirstFit!.Value)
                    );
                }
                else
                {
                    json.WriteNull("squareCuts");
                }
            }
        );
    }

    private static void Board(
        Utf8JsonWriter json,
        JsonNumbers numbers,
        NestPlan nest,
        SawnBoard board
    )
    {
        StockBoard stock = board.Stock;
        BoardCutList list = BoardCuts.Of(board, nest.Spec);
        json.WriteStartObject();
        json.WriteString("board", board.Id);
        json.WriteString("kind", NestWords.Of(stock.Kind));
        numbers.Number("lengthMm", stock.LengthMm, 4);
        numbers.Number("widthMm", stock.WidthMm, 4);
        numbers.Number("thicknessMm", stock.ThicknessMm, 4);
        json.WriteString("species", stock.Species);
        json.WriteString("grade", stock.Grade);
        json.WriteBoolean("onHand", stock.OnHand);
        json.WriteBoolean("grainAcross", stock.GrainAcross);
        json.WriteStartArray("unusable");
        foreach ((double from, double to) in Unusable(stock))
        {
            json.WriteStartArray();
            json.WriteNumberValue(Math.Round((decimal)from, 4));
            json.WriteNumberValue(Math.Round((decimal)to, 4));
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.Objects(
            "faultsInPart",
            stock.Faults.Where(f => f.LowMm is not null),
            fault =>
            {
                numbers.Number("fromMm", fault.FromMm, 4);
                numbers.Number("toMm", fault.ToMm, 4);
                numbers.Number("lowMm", fault.LowMm!.Value, 4);
                numbers.Number("highMm", fault.HighMm!.Value, 4);
            }
        );
        json.Objects(
            "pieces",
            board.Pieces,
            piece =>
            {
                json.WriteString("id", piece.Piece.Id.ToString());
                numbers.Points("outline", piece.Outline);
                if (!piece.Long.IsEmpty)
                {
                    // What stands beyond net ends that are sawn at another angle than their cards ask.
                    json.WriteStartArray("leftLong");
                    foreach (SawnLong end in piece.Long)
                    {
                        json.WriteStartArray();
                        json.WriteNumberValue(Math.Round((decimal)end.LeastMm, 4));
                        json.WriteNumberValue(Math.Round((decimal)end.MostMm, 4));
                        json.WriteEndArray();
                    }

                    json.WriteEndArray();
                }

                json.WriteBoolean("turned", piece.Turned);
                json.WriteBoolean("faceDown", piece.FaceDown);
                // From the grain, which in a sheet may run across.
                numbers.Number(
                    "tiltDegrees",
                    stock.GrainAcross ? piece.TiltDegrees + 90 : piece.TiltDegrees,
                    6
                );
            }
        );
        Sawn(json, numbers, list);
        json.Objects(
            "offcuts",
            Offcuts.Of(nest.Spec, list),
            offcut =>
            {
                json.WriteString("id", offcut.Id);
                numbers.Number("fromMm", offcut.FromMm, 4);
                numbers.Number("toMm", offcut.ToMm, 4);
                numbers.Number("lowMm", offcut.LowMm, 4);
                numbers.Number("highMm", offcut.HighMm, 4);
            }
        );
        json.WriteEndObject();
    }

    /// <summary>Lanes and cuts as on the board's cut sheet: x along the grain from where it begins there, y across it.</summary>
    private static void Sawn(Utf8JsonWriter json, JsonNumbers numbers, BoardCutList list)
    {
        json.Objects(
            "lanes",
            list.Lanes,
            lane =>
            {
                numbers.Number("lowMm", lane.LowMm, 4);
                numbers.Number("highMm", lane.HighMm, 4);
                json.Strings("pieces", lane.PieceIds.Select(piece => piece.ToString()));
            }
        );
        json.Objects(
            "cuts",
            list.Cuts,
            cut =>
            {
                json.WriteNumber("cut", cut.Number);
                json.WriteString("kind", BoardCutWords.Kind(list, cut));
                json.WriteString("ends", cut.EndOf?.ToString());
                json.WriteString("begins", cut.BeginOf?.ToString());
                numbers.Points("line", cut.ToTheLine ? cut.Line : [cut.From, cut.To]);
                numbers.Number("kerfMm", cut.KerfMm, 4);
            }
        );
    }

    /// <summary>Ends and faults that take the whole width, along the board.</summary>
    private static IEnumerable<(double From, double To)> Unusable(StockBoard stock)
    {
        if (stock.MarkedEndMm > 0)
        {
            yield return (0, stock.MarkedEndMm);
        }

        foreach (BoardFault fault in stock.Faults.Where(f => f.LowMm is null))
        {
            yield return (fault.FromMm, fault.ToMm);
        }

        if (stock.OtherEndMm > 0)
        {
            yield return (stock.LengthMm - stock.OtherEndMm, stock.LengthMm);
        }
    }
}
