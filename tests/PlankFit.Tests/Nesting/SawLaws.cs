using NetTopologySuite.Geometries;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;
using Shape = NetTopologySuite.Geometries.Geometry;

namespace PlankFit.Tests.Nesting;

/// <summary>
/// A saw that knows the board and its list of cuts and nothing else: cut by cut, in their order, it takes a straight kerf out of the part that the cut is made
/// in, from edge to edge of that part. It takes nothing off any piece, and at the end each piece lies alone.
/// </summary>
internal static class SawLaws
{
    /// <summary>So little off a piece is told as nothing, mm: outlines are thinned within less when they are laid.</summary>
    private const double HairMm = 0.06;

    /// <summary>Further than any part reaches, mm.</summary>
    private const double FarMm = 1e5;

    private static readonly GeometryFactory Nts = new();

    public static IEnumerable<string> Broken(NestSpec spec, SawnBoard board) =>
        Broken(spec, BoardCuts.Of(board, spec));

    public static IEnumerable<string> Broken(NestSpec spec, BoardCutList list)
    {
        string board = list.Board.Id;
        var shapes = list.Board.Pieces.ToDictionary(
            p => p.Piece.Id,
            p => BoardLaws.Shape(list.Frame.Of(p))
        );
        Dictionary<PieceId, Shape> crosscut = Within(shapes, HairMm),
            ripped = Within(shapes, HairMm + spec.ProudMm);
        List<Shape> parts =
        [
            Nts.ToGeometry(new Envelope(0, list.Frame.LengthMm, 0, list.Frame.WidthMm)),
        ];
        foreach (SawCut cut in list.Cuts)
        {
            string text = $"{board}, cut {cut.Number} {cut.Kind} {cut.EndOf}|{cut.BeginOf}";
            Shape kerf = Kerf(cut);
            // A rip, and what takes the empty end off, goes through what it lies in itself, any other cut through what its piece lies in.
            Shape part = parts.MaxBy(p =>
                cut.Kind is CutKind.Rip or CutKind.EndOff
                    ? p.Common(Kerf(cut, overMm: 0)).Area
                    : p.Common(shapes[(cut.EndOf ?? cut.BeginOf)!.Value]).Area
            )!;
            foreach ((PieceId id, Shape shape) in cut.Kind == CutKind.Rip ? ripped : crosscut)
            {
                if (part.Intersects(shape) && kerf.Intersects(shape))
                {
                    yield return $"{text} takes {Math.Sqrt(kerf.Common(shapes[id]).Area):0.0} mm square off {id}";
                }
            }

            parts.Remove(part);
            Shape left = part.Without(kerf);
            parts.AddRange(Enumerable.Range(0, left.NumGeometries).Select(left.GetGeometryN));
        }

        foreach (Shape part in parts)
        {
            PieceId[] joined =
            [
                .. crosscut.Where(s => part.Intersects(s.Value)).Select(s => s.Key),
            ];
            if (joined.Length > 1)
            {
                yield return $"{board}: {string.Join(", ", joined)} are still joined when all cuts are made";
            }
        }
    }

    private static Dictionary<PieceId, Shape> Within(
        Dictionary<PieceId, Polygon> shapes,
        double byMm
    ) => shapes.ToDictionary(s => s.Key, s => s.Value.Buffer(-byMm));

    /// <summary>What a cut turns to dust, carried on straight beyond both its ends.</summary>
    private static Shape Kerf(SawCut cut, double overMm = FarMm)
    {
        bool along = cut.Kind is CutKind.Rip or CutKind.Edge;
        Vec2 on = overMm * (cut.To - cut.From).Unit();
        Vec2[] line = cut.ToTheLine
            ? [cut.Line[0] - on, .. cut.Line, cut.Line[^1] + on]
            : [cut.From - on, cut.To + on];
        // A saw without a kerf still parts what it goes through.
        double kerf = Math.CopySign(Math.Max(1e-6, Math.Abs(cut.KerfMm)), cut.KerfMm);
        Vec2[] beside =
        [
            .. line.Skip(1)
                .Zip(line, (to, from) => (along ? kerf : -kerf) * (to - from).Unit().Left()),
        ];
        var dust = new List<Shape>();
        for (int i = 0; i < beside.Length; i++)
        {
            dust.Add(Hull(line[i], line[i + 1], line[i + 1] + beside[i], line[i] + beside[i]));
            if (i > 0)
            {
                dust.Add(Hull(line[i], line[i] + beside[i - 1], line[i] + beside[i]));
            }
        }

        return NetTopologySuite.Operation.OverlayNG.OverlayNGRobust.Union(dust);
    }

    private static Shape Hull(params Vec2[] points) =>
        Nts.CreateMultiPointFromCoords([.. points.Select(p => new Coordinate(p.X, p.Y))])
            .ConvexHull();
}
