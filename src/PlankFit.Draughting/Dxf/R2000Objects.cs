namespace PlankFit.Draughting.Dxf;

/// <summary>The end of an AC1015 file: the root dictionary and the layouts of its two spaces, the same in all of ours.</summary>
internal static class R2000Objects
{
    public static readonly byte[] End = DxfOutput.Template(
        $"""
        0 ENDSEC
        0 SECTION
        2 OBJECTS
        0 DICTIONARY
        5 C
        330 0
        100 AcDbDictionary
        281 1
        3 ACAD_GROUP
        350 D
        3 ACAD_LAYOUT
        350 1A
        0 DICTIONARY
        5 D
        330 C
        100 AcDbDictionary
        281 1
        0 DICTIONARY
        5 1A
        330 C
        100 AcDbDictionary
        281 1
        3 Layout1
        350 1E
        3 Model
        350 22
        {Layout("22", 1024, "Model", 0, "1F")}
        {Layout("1E", 0, "Layout1", 1, "1B")}
        0 ENDSEC
        0 EOF
        """
    );

    private static string Layout(string handle, int plot, string name, int order, string space)
    {
        int[] plain = [40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 140, 141];
        int[] extents = [10, 20, 11, 21, 12, 22, 32, 14, 24, 34, 15, 25, 35, 146, 13, 23, 33];
        return string.Join(
            '\n',
            [
                "0 LAYOUT",
                $"5 {handle}",
                "330 1A",
                "100 AcDbPlotSettings",
                "1",
                "2 none_device",
                "4",
                "6",
                .. plain.Select(code => $"{code} 0"),
                "142 1",
                "143 1",
                $"70 {plot}",
                "72 1",
                "73 0",
                "74 5",
                "7",
                "75 16",
                "147 1",
                "148 0",
                "149 0",
                "100 AcDbLayout",
                $"1 {name}",
                "70 1",
                $"71 {order}",
                .. extents.Select(code => $"{code} 0"),
                "16 1",
                "26 0",
                "36 0",
                "17 0",
                "27 1",
                "37 0",
                "76 0",
                $"330 {space}",
            ]
        );
    }
}
