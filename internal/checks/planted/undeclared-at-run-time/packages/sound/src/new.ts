import 'mixer';
