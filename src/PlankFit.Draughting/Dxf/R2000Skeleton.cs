namespace PlankFit.Draughting.Dxf;

/// <summary>
/// The parts of an AC1015 file that are the same in all of ours: tables with their one standard record, the two spaces, their layouts. Every handle
/// in them is below <see cref="FirstFree"/>. Source: the DXF reference's tables of group codes; accepted without complaint by ezdxf, GDAL and LibreCAD.
/// </summary>
internal static class R2000Skeleton
{
    public const int FirstFree = 0x30;
    public const int LineTypeTable = 0x5;
    public const int LayerTable = 0x2;
    public const int ModelSpace = 0x1F;
    public const int DashedLineType = 0x17;

    public static readonly byte[] Begin = DxfOutput.Template(
        """
        0 SECTION
        2 HEADER
        9 $ACADVER
        1 AC1015
        9 $DWGCODEPAGE
        3 ANSI_1252
        """
    );

    public static readonly byte[] Tables = DxfOutput.Template(
        """
        0 ENDSEC
        0 SECTION
        2 CLASSES
        0 ENDSEC
        0 SECTION
        2 TABLES
        0 TABLE
        2 VPORT
        5 8
        330 0
        100 AcDbSymbolTable
        70 1
        0 VPORT
        5 29
        330 8
        100 AcDbSymbolTableRecord
        100 AcDbViewportTableRecord
        """
    );

    public static readonly byte[] LineTypes = DxfOutput.Template(
        """
        0 ENDTAB
        0 TABLE
        2 LTYPE
        5 5
        330 0
        100 AcDbSymbolTable
        """
    );

    /// <summary>The three that are always there.</summary>
    public static readonly byte[] StandardLineTypes = DxfOutput.Template(
        """
        0 LTYPE
        5 14
        330 5
        100 AcDbSymbolTableRecord
        100 AcDbLinetypeTableRecord
        2 ByBlock
        70 0
        3
        72 65
        73 0
        40 0
        0 LTYPE
        5 15
        330 5
        100 AcDbSymbolTableRecord
        100 AcDbLinetypeTableRecord
        2 ByLayer
        70 0
        3
        72 65
        73 0
        40 0
        0 LTYPE
        5 16
        330 5
        100 AcDbSymbolTableRecord
        100 AcDbLinetypeTableRecord
        2 CONTINUOUS
        70 0
        3 Solid line
        72 65
        73 0
        40 0
        """
    );

    public static readonly byte[] Layers = DxfOutput.Template(
        """
        0 ENDTAB
        0 TABLE
        2 LAYER
        5 2
        330 0
        100 AcDbSymbolTable
        """
    );

    public static readonly byte[] Entities = DxfOutput.Template(
        """
        0 ENDTAB
        0 TABLE
        2 STYLE
        5 3
        330 0
        100 AcDbSymbolTable
        70 1
        0 STYLE
        5 11
        330 3
        100 AcDbSymbolTableRecord
        100 AcDbTextStyleTableRecord
        2 STANDARD
        70 0
        40 0
        41 1
        50 0
        71 0
        42 1
        3 txt
        4
        0 ENDTAB
        0 TABLE
        2 VIEW
        5 6
        330 0
        100 AcDbSymbolTable
        70 0
        0 ENDTAB
        0 TABLE
        2 UCS
        5 7
        330 0
        100 AcDbSymbolTable
        70 0
        0 ENDTAB
        0 TABLE
        2 APPID
        5 9
        330 0
        100 AcDbSymbolTable
        70 1
        0 APPID
        5 12
        330 9
        100 AcDbSymbolTableRecord
        100 AcDbRegAppTableRecord
        2 ACAD
        70 0
        0 ENDTAB
        0 TABLE
        2 DIMSTYLE
        5 A
        330 0
        100 AcDbSymbolTable
        70 1
        100 AcDbDimStyleTable
        0 DIMSTYLE
        105 27
        330 A
        100 AcDbSymbolTableRecord
        100 AcDbDimStyleTableRecord
        2 STANDARD
        70 0
        340 11
        0 ENDTAB
        0 TABLE
        2 BLOCK_RECORD
        5 1
        330 0
        100 AcDbSymbolTable
        70 2
        0 BLOCK_RECORD
        5 1F
        330 1
        100 AcDbSymbolTableRecord
        100 AcDbBlockTableRecord
        2 *MODEL_SPACE
        340 22
        0 BLOCK_RECORD
        5 1B
        330 1
        100 AcDbSymbolTableRecord
        100 AcDbBlockTableRecord
        2 *PAPER_SPACE
        340 1E
        0 ENDTAB
        0 ENDSEC
        0 SECTION
        2 BLOCKS
        0 BLOCK
        5 20
        330 1F
        100 AcDbEntity
        8 0
        100 AcDbBlockBegin
        2 *MODEL_SPACE
        70 0
        10 0
        20 0
        30 0
        3 *MODEL_SPACE
        1
        0 ENDBLK
        5 21
        330 1F
        100 AcDbEntity
        8 0
        100 AcDbBlockEnd
        0 BLOCK
        5 1C
        330 1B
        100 AcDbEntity
        67 1
        8 0
        100 AcDbBlockBegin
        2 *PAPER_SPACE
        70 0
        10 0
        20 0
        30 0
        3 *PAPER_SPACE
        1
        0 ENDBLK
        5 1D
        330 1B
        100 AcDbEntity
        67 1
        8 0
        100 AcDbBlockEnd
        0 ENDSEC
        0 SECTION
        2 ENTITIES
        """
    );
}
