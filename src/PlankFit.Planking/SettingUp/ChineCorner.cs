using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;

namespace PlankFit.Planking.SettingUp;

/// <summary>
/// The corner of bottom and topside in the plane square to the chine, both flat there: closed forms. Axes: s along the bottom, outward from the table's chine;
/// z along the bottom's outward normal from the table's surface. With the corner's angle θ in the wood, the topside's face so far (k) out from the table's topside
/// meets the bottom's face at z in s = z cot θ + k / sin θ.
/// </summary>
/// <param name="CornerDegrees">Between the two outer faces, measured in the wood.</param>
/// <param name="Edge">Where the outer faces meet, and the inner ones.</param>
public sealed record ChineCorner(
    double CornerDegrees,
    double BottomMm,
    double TopsideMm,
    ChineTrim Trim,
    ChineRound Rounded,
    ImmutableArray<Vec2> Joint,
    ImmutableArray<Vec2> Piece,
    (Vec2 Outer, Vec2 Inner) Edge
)
{
    /// <summary>Of the planks' ends off square to their face; positive where the outer face is the longer.</summary>
    public double TrimBevelDegrees =>
        Math.Atan((Trim.OuterMm - Trim.InnerMm) / BottomMm) * 180 / Math.PI;

    /// <summary>What the chine log's edge departs from square: positive where its angle is more than 90, a standing bevel.</summary>
    public double LogBevelDegrees => CornerDegrees - 90;

    /// <summary>The widths of the chine piece's two inner faces, along the bottom and up the topside; null where there is none.</summary>
    public (double BottomMm, double UpMm)? PieceInner =>
        Piece.IsEmpty ? null : ((Piece[3] - Piece[2]).Norm, (Piece[4] - Piece[3]).Norm);

    /// <summary>Whether the piece reaches past the corner's inner edge on both faces.</summary>
    public bool PieceHolds =>
        Piece.IsEmpty
        || (Piece[2].X < Piece[3].X && (Piece[4] - Piece[3]).Dot(Up(CornerDegrees)) > 0);

    /// <param name="cornerDegrees">More than 0, less than 180.</param>
    /// <param name="to">Which faces the table's chine is the corner of.</param>
    public static ChineCorner Of(
        double cornerDegrees,
        double bottomMm,
        double topsideMm,
        OffsetsAreTo to,
        ChineLap lap,
        double radiusMm,
        ChinePieceSpec? piece
    )
    {
        double angle = cornerDegrees * Math.PI / 180,
            cot = 1 / Math.Tan(angle),
            sin = Math.Sin(angle);
        (double zIn, double zOut) = Stack.Faces(bottomMm, to);
        (double kIn, double kOut) = Stack.Faces(topsideMm, to);
        double At(double z, double k) => (z * cot) + (k / sin);
        Vec2 outer = new(At(zOut, kOut), zOut),
            inner = new(At(zIn, kIn), zIn);
        (double trimOut, double trimIn) = (piece, lap) switch
        {
            ({ } p, _) => (outer.X - p.WidthMm, outer.X - p.WidthMm),
            (_, ChineLap.BottomLapsTopside) => (outer.X, At(zIn, kOut)),
            (_, ChineLap.TopsideLapsBottom) => (At(zOut, kIn), inner.X),
            _ => (outer.X, inner.X),
        };
        double turned = (Math.PI - angle) / 2;
        return new(
            cornerDegrees,
            bottomMm,
            topsideMm,
            new(trimOut, trimIn),
            new(radiusMm * Math.Tan(turned), radiusMm * ((1 / Math.Cos(turned)) - 1)),
            Between(lap, piece, new(trimOut, zOut), new(trimIn, zIn), outer, inner, cornerDegrees),
            piece is null ? [] : Six(piece, outer, inner, zIn, cornerDegrees, topsideMm),
            (outer, inner)
        );
    }

    /// <summary>The round as a chain of points from the bottom's face to the topside's.</summary>
    public ImmutableArray<Vec2> Round(double radiusMm)
    {
        const int n = 24;
        double from = Math.PI / 2,
            to = (CornerDegrees - 90) * Math.PI / 180;
        Vec2 centre = Edge.Outer - new Vec2(Rounded.TangentMm, radiusMm);
        return
        [
            .. Enumerable
                .Range(0, n + 1)
                .Select(i => from + ((to - from) * i / n))
                .Select(a => centre + (radiusMm * new Vec2(Math.Cos(a), Math.Sin(a)))),
        ];
    }

    /// <summary>Up along the topside.</summary>
    internal static Vec2 Up(double cornerDegrees)
    {
        (double sin, double cos) = Math.SinCos(cornerDegrees * Math.PI / 180);
        return new(-cos, -sin);
    }

    /// <summary>The seam between the skins, from the outer faces in.</summary>
    private static ImmutableArray<Vec2> Between(
        ChineLap lap,
        ChinePieceSpec? piece,
        Vec2 trimOut,
        Vec2 trimIn,
        Vec2 outer,
        Vec2 inner,
        double cornerDegrees
    ) =>
        (piece, lap) switch
        {
            ({ }, _) => [trimOut, trimIn],

            // The topside stands on the bottom's inner face.
            (_, ChineLap.BottomLapsTopside) => [outer, trimIn, inner],

            // The bottom ends on the topside's inner face, which runs on to the bottom's outer face.
            (_, ChineLap.TopsideLapsBottom) => [trimOut, inner],
            _ => [outer, inner],
        };

    /// <summary>Outer edge, in along the bottom, inward, the inner edge, up the topside's inner face, and out.</summary>
    private static ImmutableArray<Vec2> Six(
        ChinePieceSpec piece,
        Vec2 outer,
        Vec2 inner,
        double zIn,
        double cornerDegrees,
        double topsideMm
    )
    {
        Vec2 up = Up(cornerDegrees),
            top = outer + (piece.UpMm * up);
        double angle = cornerDegrees * Math.PI / 180;
        Vec2 into = -topsideMm * new Vec2(Math.Sin(angle), -Math.Cos(angle));
        return
        [
            outer,
            new(outer.X - piece.WidthMm, outer.Y),
            new(outer.X - piece.WidthMm, zIn),
            inner,
            top + into,
            top,
        ];
    }
}

/// <summary>How much further than the table's chine, carried square to the surface, the bottom's planks end, mm; negative is shorter.</summary>
/// <param name="OuterMm">On their outer face.</param>
/// <param name="InnerMm">On the inner face of the whole stack.</param>
public sealed record ChineTrim(double OuterMm, double InnerMm);

/// <summary>The edge rounded for cloth, mm.</summary>
/// <param name="TangentMm">From the corner's edge to where the round begins, on either face.</param>
/// <param name="OffMm">What it takes off the edge, along the corner's middle line.</param>
public sealed record ChineRound(double TangentMm, double OffMm);
