namespace SheetGen.Tests.Drawing.Set;

/// <summary>An invented project with most keys of the project file, every value unlike any other, so that it is known again on the sheets.</summary>
internal static class GivenProject
{
    public const string Yaml = """
        format: 1
        project:
          title: Zephyr gorge
          number: ZG-771
          units: ft
          owner: Zz owner word
          location: Zz location word
          vertical_datum: zz vertical datum word
          horizontal_datum: zz horizontal datum word
          coordinate_zone: zz coordinate zone word
          grid_to_ground: zz grid to ground word
          designed: ZA. B.
          drawn: ZC. D.
          checked: ZE. F.
          approved: ZG. H.
        design:
          specification: zz specification word
          design_loads: zz design loads word
          seismic: zz seismic word
          service_life: zz service life word
          soil: zz soil word
          bond: zz bond word
          nail_load: zz nail load word
          corrosion_protection: zz corrosion protection word
          bar_standard: zz bar standard word
          grout_strength: zz grout strength word
          shotcrete_strength: zz shotcrete strength word
          concrete_strength: zz concrete strength word
          mesh: zz mesh word
          mesh_cover: zz mesh cover word
          waler_bars: zz waler bars word
          bearing_bars: zz bearing bars word
          plate: zz plate word
          studs: zz studs word
          nut_and_washer: zz nut and washer word
          centralizers: zz centralizers word
          drainage_strip: zz drainage strip word
          leveling_pad: zz leveling pad word
          strip_lap: zz strip lap word
          weep_holes: zz weep holes word
          underdrain: zz underdrain word
          drain_outlet: zz drain outlet word
          facing_bars: zz facing bars word
          facing_cover: zz facing cover word
          connection: zz connection word
          gap_fill: zz gap fill word
          coping_bars: zz coping bars word
          corner_bars: zz corner bars word
          trim_bars: zz trim bars word
          joint: zz joint word
          groundwater: zz groundwater word
          surface_water: zz surface water word
          test_gap: zz test gap word
          facing_time: zz facing time word
          verification_load: zz verification load word
          proof_load: zz proof load word
          finish: zz finish word
          wall_ends: zz wall ends word
          adjacent_structures: zz adjacent structures word
          construction_sequence: zz construction sequence word
          monitoring: zz monitoring word
          traffic: zz traffic word
          site_limits: zz site limits word
        layout_lines:
          - name: ZL-7
            start: {station: 41+03.37, northing: 7123.41, easting: 3217.83, azimuth: 83.125}
            elements:
              - line: 61.27
              - arc: {radius: 347.19, length: 43.77, turn: left}
              - line: 40.5
              - spiral: {length: 31.3, end_radius: 913.7, turn: right}
              - line: 20
              - corner: {turn: right, angle: 17.375}
              - line: 57.13
            station_equations: [{back: 41+90, ahead: 51+11.5}]
        walls:
          - name: Zwall
            layout_line: ZL-7
            retained_side: right
            faces: north
            stations: [41+13.21, 52+67.93]
            face_offset: 1.37
            batter: {angle: 3.5 deg, elevation: 211.17}
            top: [[41+13.21, 223.19], [41+71.5, 229.83], {station: 51+31.7, elevation: 230.41, curve: 20}, [52+67.93, 226.07]]
            existing_ground: [[41+13.21, 225.3], [52+67.93, 229.1]]
            finished_grade: [[41+13.21, 213.3], [52+67.93, 214.2]]
            bottom: {steps: [[41+13.21, 211.17], [51+29.54, 211.83]]}
            panels: {width: 9.5, height: 4.7, first_break: 41+13.21}
            facing: {shotcrete: 4.3 in, kind: precast panels, thickness: 5.7 in, gap: 6.1 in, coping: zz coping word}
            drainage: {strip_width: 13.1 in, max_spacing: 9.3 ft}
            lifts: {below_row: 1.7 ft, max_exposed: 4.9 ft, max_hours: 21}
            cross_sections:
              - {station: 41+13.21, ground: [[0, 223.19], [23.7, 213.3]]}
            openings: [{name: Zopening, stations: [51+61.3, 51+65.9], bottom: 214.63, top: 219.37}]
            no_nails: [{stations: [41+43.7, 41+48.3], bottom: 213.77, top: 219.61, reason: zz closed word}]
            sections:
              - name: ZA
                stations: [41+13.21, 51+21.7]
                horizontal_spacing: 4.7
                columns: 1.25
                vertical_spacing: 4.3
                rows: parallel
                pattern: staggered
                top_row_depth: 2.1
                inclination: 13
                lengths: [23, 21, 19]
                bar: {size: "#9", grade: 80, weight: 3.47}
                hole: 6.3 in
                test_nails: {verification: 1, proof: 7 %, proof_marks: spread}
                stage: Zstage 4
                design:
                  t_max: [17.3, 19.1]
                  head_load: 11.9 kip
                  method: LRFD
                  load_factor: 1.37
                  factors: {pullout: 0.63, bar: 0.77, flexure: 0.91, punching: 0.89, studs: 0.71}
                  bond: 13.7 psi
                  bond_by_layer: {zz clay word: 8.3 psi}
                  slip_surface: [{name: Zcircle, angle: 53}, {name: Zplane, points: [[0, 211.17], [7.1, 219.3], [9.3, 229]]}]
                  bar_yield: 79 ksi
                  facing: {thickness: 4.3 in, concrete_strength: 4100 psi, steel_depth: 2.2 in, mesh: 0.089 in2/ft, mesh_yield: 61 ksi, waler_bars: {size: "#4", count: 2}, bearing_bars: {size: "#5", count: 2}, bar_yield: 62 ksi, pressure_factor: 1.9, soil_reaction: 1.1}
                  permanent_facing: {thickness: 5.7 in, concrete_strength: 4200 psi, steel_depth: 2.9 in, mesh: 0.31 in2/ft, mesh_yield: 63 ksi, pressure_factor: 1.05}
                  plate: {width: 8.5 in, thickness: 0.77 in}
                  studs: {count: 4, diameter: 0.51 in, length: 4.13 in, head_diameter: 1.01 in, head_thickness: 0.33 in, spacing: 6.2 in, yield: 59 ksi}
                  least_ratio: 1.03
                  area_share: 17 %
              - name: ZB
                stations: [51+21.7, 52+67.93]
                horizontal_spacing: 5.1
                vertical_spacing: 4.9
                rows: top_parallel
                top_row_depth: 2.2
                inclination: 16
                lengths: 22
                bar: "#8 Gr 75"
                hole: 6.7 in
                corner_rows: shifted
                test_nails: {verification: 1, proof: 7 %}
        obstructions:
          - {name: Zshaft 1, kind: shaft, at: {station: 41+33.7, offset: 7.3}, diameter: 37 in, top: 228.3, bottom: 171.9, repeat: {count: 2, every: 13.7}}
          - {name: Zpile, kind: pile, axis: [{station: 51+41.1, offset: 8.1, elevation: 227.7}, {station: 51+41.9, offset: 9.7, elevation: 181.3}], diameter: 17 in}
          - {name: Zcap, kind: solid, footprint: [[41+30.3, 4.1], [41+51.9, 4.1], [41+51.9, 9.7], [41+30.3, 9.7]], bottom: 228.3, top: 231.9}
          - {name: Zbeam, kind: beam, from: {station: 41+40.1, offset: -19.3}, to: {station: 41+40.1, offset: 8.3}, width: 2.7, bottom: 231.9, top: 234.7}
          - {name: Zmain, kind: pipe, points: [{station: 41+10, offset: 17.3, elevation: 221.7}, {station: 41+80, offset: 17.3, elevation: 220.9}], straight: true, diameter: 14.3 in, owner: zz owner of main, state: abandoned, quality_level: C, source: zz source of main}
          - {name: Zinvert, kind: pipe, offset_line: 19.1, stations: [51+31.3, 51+71.9], invert: 216.37, grade: -0.7 %, elevation_is: invert, bore: 17 in, diameter: 19 in, owner: zz board, state: proposed, quality_level: A}
          - {name: Zrow, kind: boundary, offset_line: 41.7}
        borings:
          - {name: ZBH-3, at: {station: 41+57.3, offset: 11.9}, top: 228.9, bottom: 163.7, water: 207.7, layers: [{to: 217.3, name: zz clay word, plasticity_index: 23}, {to: 171.3, name: zz sand word}]}
        fixed:
          - {section: ZA, row: 2, station: 41+60.5, splay: 4, inclination: 14, length: 27}
          - {section: ZB, row: 2, station: 51+90, leave_out: true}
          - {section: ZB, row: 2, station: 51+86, leave_out: true}
        accept:
          - {code: cover, stations: [41+13.21, 52+67.93], reason: zz accepted word, by: "ZI. J., 2026-03-07"}
        sheets: {size: ANSI D, scale: 5, revision: Z3, date: 2026-03-09, half_size: false, section_word: zreach, first_number: 31, language: english, revisions: [{number: Z1, date: 2026-02-11, text: zz revision word}]}
        pay_items: generic
        pay_length_from: face
        rates: {test_bonded_length: 9.7, test_free_length: 5.3, proof_free_length: 3.1, centralizer_spacing: 7.3 ft, centralizer_end: 1.9 ft, design_bond: 2.3, grout_overrun: 1.3, bearing_bar_length: 2.9 ft, pad: {width: 11.7 in, height: 5.9 in}, coping: {width: 17.3 in, height: 11.3 in}}
        rules:
          clearance: {obstruction: 5.7 in, nail: 5.3 in, boundary: 1.3 ft}
          drift: 0.3 %
          redirect: {field_tolerance: 9, step: 1, maximum: 27, inclination: [6, 24], lengthen: true}
          shift_step: 0.25
          top_max: 2.7
          bottom_max: 3.3
          min_gap: 1.9
          moved_gap_max: 5.3
          corner_clear: 1.1
          edge_min: 0.9
          heads_below_grade: allow
          bar_projection: 6.7 in
          length_increment: 1
        """;
}
